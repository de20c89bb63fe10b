// A hand on the glass: touches that last as a finger's do, where the page shows what it presses.

const pause = (ms) => new Promise((done) => setTimeout(done, ms));

export class Hand {
  static async at(page) {
    const hand = new Hand();
    hand.page = page;
    hand.glass = await page.context().newCDPSession(page);
    return hand;
  }

  /// `at`: when the glass felt it, in seconds; now, where nothing is said.
  touch(type, points, at) {
    return this.glass.send('Input.dispatchTouchEvent', {
      type,
      timestamp: at,
      touchPoints: points.map(({ x, y, id = 0 }) => ({ x, y, id })),
    });
  }

  /// Where the middle of a control is, once it is in sight.
  async middle(control) {
    await control.waitFor();
    // A page that is just being filled may hand over another element of the same name.
    let box = null;
    for (let tries = 0; box === null && tries < 5; tries += 1) {
      await control.scrollIntoViewIfNeeded().catch(() => pause(50));
      box = await control.boundingBox();
    }
    const { x, y, width, height } = box;
    return { x: x + width / 2, y: y + height / 2 };
  }

  async tapAt(at, ms = 60) {
    await this.touch('touchStart', [at]);
    await pause(ms);
    await this.touch('touchEnd', []);
  }

  async tap(control, ms) {
    await this.tapAt(await this.middle(control), ms);
  }

  /// Presses the one, slides to the other and lifts there. `to` is asked for when the finger is down: it may come only then.
  async slide(from, to) {
    const start = await this.middle(from);
    await this.touch('touchStart', [start]);
    await pause(60);
    const end = await this.middle(to);
    for (const part of [0.3, 0.6, 1]) {
      await this.touch('touchMove', [{ x: start.x + (end.x - start.x) * part, y: start.y + (end.y - start.y) * part }]);
    }
    await pause(30);
    await this.touch('touchEnd', []);
  }

  button(name) {
    return this.page.getByRole('button', { name, exact: true }).last();
  }

  cell(kind, text) {
    return this.page.locator(`.cell.${kind}[aria-label="${text}"]`);
  }
}

/// What the person reads: the tree recorded last, and how many there are on the plot.
export const readBack = async (page) => ({
  reading: (await page.locator('#reading').innerText()).replaceAll('\u00a0', ' '),
  stems: await page.locator('#stems').innerText(),
});

/// Waits until so many trees are told as stored.
export const untilStems = (page, stems) =>
  page.waitForFunction((wanted) => document.getElementById('stems')?.textContent === wanted, String(stems));
