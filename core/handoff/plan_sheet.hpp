#pragma once

#include <string>
#include <vector>

namespace oaklight {

/// One straight leg of a walk, in words.
struct PlanLeg {
  std::string true_bearing;      ///< "123"
  std::string magnetic_bearing;  ///< "130"; "" where no declination can be told
  std::string distance;          ///< "312 ft", "4.73 ch", "95 m"
  std::string paces;             ///< "156"; "" without a pace count
};

/// A plot, and the way to it from the place before.
struct PlanStop {
  std::string name;      ///< "Cove 4", or "back to the start"
  std::string position;  ///< decimal degrees
  std::vector<PlanLeg> legs;
};

/// What is printed for people who walk without a tablet.
struct PlanSheet {
  std::string tract;
  bool demo = false;  ///< invented data: every page says so
  std::string made_on;
  std::vector<std::string> cautions;  ///< first on the sheet
  std::vector<std::string> head;      ///< start, length, which north, declination, paces
  std::vector<PlanStop> stops;
  std::vector<std::string> notes;
};

}  // namespace oaklight
