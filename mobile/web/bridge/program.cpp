// What the WebAssembly program shows its worker: room for a request, a call, and the answer.
#include <string>

#include "mobile/web/bridge/web_desk.hpp"

namespace {

oaklight::SystemClock system_clock;
std::string request, answer;

oaklight::web::WebDesk& desk() {
  static oaklight::web::WebDesk only(system_clock, "browser");
  return only;
}

}  // namespace

extern "C" {

/// Room for a request of so many bytes.
[[clang::export_name("oaklight_room")]] char* oaklight_room(std::size_t size) {
  request.resize(size);
  return request.data();
}

/// Answers what was put there. returns  bytes of the answer
[[clang::export_name("oaklight_call")]] std::size_t oaklight_call() {
  answer = desk().answer(request);
  return answer.size();
}

[[clang::export_name("oaklight_answer")]] const char* oaklight_answer() { return answer.data(); }

/// Closes the tract, so that the next one who opens its file finds it as after any end.
[[clang::export_name("oaklight_close")]] void oaklight_close() { desk().close(); }

}  // extern "C"
