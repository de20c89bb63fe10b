# bash completion for oaklight-tablet
_oaklight_tablet() {
  COMPREPLY=()
  [[ ${COMP_WORDS[COMP_CWORD]} == -* ]] || return 0
  mapfile -t COMPREPLY < <(compgen -W \
    '--self-test --folder --pixels-per-mm --controls --position --help --version' \
    -- "${COMP_WORDS[COMP_CWORD]}")
}
complete -o default -F _oaklight_tablet oaklight-tablet
