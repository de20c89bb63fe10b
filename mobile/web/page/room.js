// Where the cells of the tally lie: the same division of the glass as the tablet app makes (mobile/items/tally_layout.cpp).
// The only file of the page that reckons, and it reckons with pixels.

// With fewer in sight the search and the keypad would be needed too often.
const kFewestSpecies = 8;
const kFewestClasses = 10;
const kSpeciesShare = 0.45;
const kHair = 0.01; // of a cell is forgiven: shares of a length are seldom whole pixels

const whole = (length, of) => Math.max(1, Math.floor(length / of));

function grid(width, height, touch) {
  const hair = Math.max(0.5, touch * kHair);
  const columns = whole(width + hair, touch);
  return { columns, rows: whole(height + hair, touch) };
}

/// Pixels of a length that the style gives in millimetres.
export function pixels(box, property) {
  const ruler = document.createElement('i');
  ruler.style.cssText = `position:absolute;visibility:hidden;width:var(${property})`;
  box.append(ruler);
  const { width } = ruler.getBoundingClientRect();
  ruler.remove();
  return width;
}

/// {over, share, species: {columns, rows}, classes: {columns, rows}, room: {species, classes}}: `share` of the longer side is
/// the species'; over: both take the whole field in turn.
export function roomOf(box) {
  const { width, height } = box.getBoundingClientRect();
  const touch = Math.max(1, pixels(box, '--touch'));
  const gap = pixels(box, '--gap');
  const beside = width > height;
  const length = (beside ? width : height) - gap;
  const cells = whole(length, touch);
  const share = (length * Math.max(1, Math.round(cells * kSpeciesShare))) / cells;
  const of = (part) => (beside ? grid(part, height, touch) : grid(width, part, touch));
  let species = of(share);
  let classes = of(length - share);
  const cellsOf = (field) => field.columns * field.rows;
  const over = cellsOf(species) - 1 < kFewestSpecies || cellsOf(classes) < kFewestClasses;
  if (over) species = classes = grid(width, height, touch);
  // One cell is for other species, and where the classes lie over them one leads back.
  const room = { species: cellsOf(species) - 1, classes: cellsOf(classes) - (over ? 1 : 0) };
  return { over, beside, share: over ? 0 : share, species, classes, room };
}

/// Whether a finger that was put down at x, y has slid farther than one slips that means to stay.
export const isFar = (down, event, slip) => Math.hypot(event.clientX - down.x, event.clientY - down.y) > slip;
