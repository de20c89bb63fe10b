#include "core/sample/confidence.hpp"

#include <array>
#include <bit>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cstdint>

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

// No exception may leave this file: out of range gives NaN or infinity, which callers rule out.
using Quiet = boost::math::policies::policy<
    boost::math::policies::domain_error<boost::math::policies::ignore_error>,
    boost::math::policies::overflow_error<boost::math::policies::ignore_error>,
    boost::math::policies::evaluation_error<boost::math::policies::ignore_error>>;

/// The probability left in the upper tail. Asking for the upper quantile of it, and not for the
/// lower quantile of its complement, keeps the digits of confidences close to 1.
double upper_tail(Confidence confidence) { return (1.0 - confidence.share()) / 2.0; }

}  // namespace

Result<Confidence> Confidence::from_share(double share) {
  if (share > 0.0 && share < 1.0) return Confidence(share);
  return Error{ErrorCode::level_out_of_range,
               "A confidence of " + number_text(100.0 * share, 1) + " % can't be reached.",
               "confidence", "Choose one above 0 and below 100 %; 95 and 90 are usual."};
}

double student_t(Confidence confidence, double df) {
  // The figures of one stand all ask for the same, and so do the next ones after a tap; of the
  // plots still needed a few sizes of sample are tried.
  struct Asked {
    double share = 0.0, df = 0.0, t = 0.0;
  };
  thread_local std::array<Asked, 64> lately;
  // The upper bits of a product with 2^64 over the golden ratio spread whatever the numbers are.
  const auto spread = std::bit_cast<std::uint64_t>(df) * 0x9E37'79B9'7F4A'7C15U;
  Asked& last = lately[spread >> 58U];
  if (last.share != confidence.share() || last.df != df) {
    const boost::math::students_t_distribution<double, Quiet> t(df);
    last = {confidence.share(), df, quantile(complement(t, upper_tail(confidence)))};
  }
  return last.t;
}

double normal_multiplier(Confidence confidence) {
  const boost::math::normal_distribution<double, Quiet> z;
  return quantile(complement(z, upper_tail(confidence)));
}

}  // namespace oaklight
