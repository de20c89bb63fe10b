#include "core/store/forms_in_file.hpp"

#include <nlohmann/json.hpp>

#include "core/base/sha256.hpp"

namespace oaklight::store {
namespace {

/// Forms in JSON say which version they are; those in CSV do not.
std::optional<std::string> stated_version(const std::string& text) {
  const auto json = nlohmann::json::parse(text, nullptr, false);
  if (!json.is_object()) return std::nullopt;
  const auto version = json.find("version");
  if (version == json.end() || !version->is_string()) return std::nullopt;
  return version->get<std::string>();
}

}  // namespace

FormFile built_in_form(const EmbeddedFile& file, Id<FormFileTag> id) {
  FormFile form;
  form.id = id;
  form.path = file.path;
  set_text(form, std::string(file.text));
  form.built_in_sha256 = form.sha256;
  return form;
}

void set_text(FormFile& form, std::string text) {
  form.version = stated_version(text);
  form.sha256 = sha256_hex(text);
  form.text = std::move(text);
}

Result<bool> give_row_of_form(SqliteHandle& db, const RecordTable& forms, Row record) {
  const Value& path = forms.at(record, "path");
  const auto there = db.first("SELECT 1 FROM form_file WHERE path = ?1", {path});
  if (!there) return there.error();
  if (!there->has_value()) return false;
  const auto named =
      db.run("UPDATE form_file SET uid = ?1 WHERE path = ?2", {forms.uid_of(record), path});
  if (!named) return named.error();
  if (const auto written = forms.update(db, record); !written) return written.error();
  return true;
}

}  // namespace oaklight::store
