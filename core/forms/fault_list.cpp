#include "core/forms/fault_list.hpp"

#include <algorithm>

namespace oaklight {

void FaultList::add(CruiseFile file, int line, Error fault) {
  std::size_t& kept = kept_[static_cast<std::size_t>(file)];
  ++found_[static_cast<std::size_t>(file)];
  if (kept >= kMaxFaults) {
    ++more_;
    return;
  }
  ++kept;
  faults_.push_back({file, line, std::move(fault)});
}

std::vector<Error> FaultList::told() const {
  std::vector<const Fault*> order;
  for (const Fault& fault : faults_) order.push_back(&fault);
  std::stable_sort(order.begin(), order.end(), [](const Fault* a, const Fault* b) {
    return a->file != b->file ? a->file < b->file : a->line < b->line;
  });
  std::vector<Error> told;
  for (const Fault* fault : order) {
    if (told.size() < kMaxFaults) told.push_back(fault->error);
  }
  const std::size_t more = order.size() - told.size() + more_;
  if (more > 0) {
    told.push_back({ErrorCode::import_refused,
                    "And " + std::to_string(more) + (more == 1 ? " more fault" : " more faults") +
                        ", not listed.",
                    "", "Mend these first and try again."});
  }
  return told;
}

}  // namespace oaklight
