#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"
#include "core/model/species.hpp"

namespace oaklight {

/// Finds species by what people write. Capitals do not matter, a hyphen is as good as a blank.
class SpeciesNames {
 public:
  /// table is copied from; it need not live on.
  explicit SpeciesNames(const SpeciesTable& table);

  /// By FIA code ("802", "0068"), PLANTS symbol, common name, scientific name, or a local name that
  /// leads to one species only, in this order.
  ///
  /// errors  unknown_species. A local name of two species, or one whose remark in brackets says
  /// that
  ///         it is misused or regional, is refused with each candidate named; a name that is nearly
  ///         right gets the near one in `fix`. `where` is empty.
  [[nodiscard]] Result<SpeciesCode> find(std::string_view typed) const;

  /// The common name, for messages; "" when the code is unknown.
  [[nodiscard]] std::string common_name(SpeciesCode code) const;

 private:
  struct Local {
    SpeciesCode code;
    std::string remark;  ///< what stood in brackets, "" when the name is plain
  };
  void add(std::string_view name, SpeciesCode code);
  void add_local(std::string_view name, SpeciesCode code);
  [[nodiscard]] Error many(std::string_view typed, const std::vector<Local>& locals) const;

  std::map<int, std::string> common_;
  std::map<std::string, SpeciesCode, std::less<>> names_;
  std::map<std::string, std::vector<Local>, std::less<>> locals_;
};

}  // namespace oaklight
