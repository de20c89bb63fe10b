// Draws an SVG into a square PNG: oaklight-icon drawing.svg side out.png
#include <QImage>
#include <QPainter>
#include <QString>
#include <QSvgRenderer>
#include <iostream>

int main(int argc, char** argv) {
  if (argc != 4) {
    std::cerr << "oaklight-icon drawing.svg side out.png\n";
    return 2;
  }
  const int side = QString::fromLocal8Bit(argv[2]).toInt();
  QSvgRenderer drawing(QString::fromLocal8Bit(argv[1]));
  QImage image(side, side, QImage::Format_ARGB32_Premultiplied);
  image.fill(Qt::transparent);
  {
    QPainter painter(&image);
    drawing.render(&painter, QRectF(0, 0, side, side));
  }
  const bool made =
      drawing.isValid() && side > 0 && image.save(QString::fromLocal8Bit(argv[3]), "PNG");
  if (!made) std::cerr << "oaklight-icon: " << argv[1] << " does not become " << argv[3] << '\n';
  return made ? 0 : 1;
}
