#pragma once

#include <QByteArray>
#include <QIODevice>

#include "core/place/fix.hpp"

namespace oaklight::test {

/// What a receiver says of one second: GGA, and RMC with the date and with course and speed where
/// they are told. The accuracy is told as a dilution of precision, five metres to 1.0; without one
/// GGA leaves it out.
QByteArray nmea_of(const Fix& fix);
/// A line with its dollar and checksum.
QByteArray sentence(const QByteArray& words);

/// A cable whose other end a test holds.
class Cable : public QIODevice {
 public:
  Cable() { open(QIODevice::ReadOnly); }
  void push(const QByteArray& bytes) {
    waiting_ += bytes;
    emit readyRead();
  }
  [[nodiscard]] bool isSequential() const override { return true; }
  [[nodiscard]] qint64 bytesAvailable() const override {
    return waiting_.size() + QIODevice::bytesAvailable();
  }
  [[nodiscard]] bool canReadLine() const override {
    return waiting_.contains('\n') || QIODevice::canReadLine();
  }

 protected:
  qint64 readData(char* to, qint64 most) override;
  qint64 writeData(const char*, qint64) override { return -1; }

 private:
  QByteArray waiting_;
};

}  // namespace oaklight::test
