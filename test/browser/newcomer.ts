import type { Page } from 'playwright-core';

/** What a newcomer measured of his blank, in the order in which he would say it. */
export interface Measured {
  sections: number;
  lengths: readonly string[];
  masses: readonly string[];
  overlaps: readonly string[];
  diameters: readonly string[];
  drops: readonly string[];
  /** Above the level line where the blank leaves the clamp. */
  clamp: readonly string[];
  gripFront: string;
  /** Undefined: he has no reel at hand. */
  reel?: string;
}

/** What the first hour asked of him. */
export interface Effort {
  clicks: number;
  /** Filled in; those that Enter passed over are not counted. */
  fields: number;
  /** Turns of the wheel, most of a screen each. */
  scrolls: number;
  /** Words in sight on each screen when it was first met, folds shut. */
  words: Record<string, number>;
  /** What was pressed, in order. */
  pressed: string[];
}

/**
 * Someone who has never seen Fairbend: he does what the line “Next” says, presses what it offers, and types what he
 * measured where the cursor stands. A turn after which nothing has moved is a dead end and ends the walk with its words.
 */
export class Newcomer {
  readonly effort: Effort = { clicks: 0, fields: 0, scrolls: 0, words: {}, pressed: [] };
  private readonly left: Record<string, string[]>;

  constructor(
    private readonly page: Page,
    private readonly measured: Measured,
  ) {
    const { lengths, masses, overlaps, diameters, drops, clamp, gripFront, reel } = measured;
    this.left = {
      '^Length': [...lengths],
      '^Mass$': [...masses],
      '^Overlap': [...overlaps],
      '^Diameter of': [...diameters],
      '^Drop at': [...drops],
      '^Height above the level line': [...clamp],
      'front of the grip': [gripFront],
      'leaves the reel': reel === undefined ? [] : [reel],
    };
  }

  /** From the shelf to the button that makes the strips, which is pressed last. */
  async walk(): Promise<void> {
    await this.press(this.page.getByRole('button', { name: 'New build' }), 'New build');
    for (let turn = 0; turn < 80; turn++) {
      await this.countWords();
      const before = await this.state();
      if (await this.turn()) return;
      await this.settled(before);
    }
    throw new Error(`after 80 turns there is no strip: ${this.effort.pressed.join(' · ')}`);
  }

  /** What he had measured and nobody asked for. */
  get notAsked(): string[] {
    return Object.values(this.left).flat();
  }

  /** One thing done; true when it was the strips. */
  private async turn(): Promise<boolean> {
    if (await this.typeHere()) return false;
    const sections = new RegExp(`^Lay out ${this.measured.sections} sections`);
    for (const name of [/^Strips as PDF/, /^Place the guides/, /^Lay out the ten-minute start/, sections]) {
      const button = this.page.getByRole('button', { name, disabled: false });
      if (!(await isSeen(button))) continue;
      if (name.source.startsWith('^Place') && this.effort.pressed.includes('Place the guides')) continue;
      await this.press(button, await nameOf(button));
      return name.source.startsWith('^Strips');
    }
    const offered = this.page.getByRole('note', { name: 'What to do next' }).locator('button, a');
    if (await isSeen(offered)) await this.press(offered.first(), await nameOf(offered.first()));
    return false;
  }

  /** Where the cursor stands in an empty field: what was measured, and Enter; Enter alone where nothing was. */
  private async typeHere(): Promise<boolean> {
    // what the page asks him to have done first, such as bound ferrules
    if (await this.page.evaluate(() => document.activeElement?.matches('.gate input:not(:checked)'))) {
      await this.page.keyboard.press('Space');
      return true;
    }
    const label = await this.page.evaluate(() => {
      const field = document.activeElement;
      const isEmpty =
        field instanceof HTMLInputElement && field.dataset.path !== undefined && field.value === '';
      return isEmpty ? (field.labels?.[0]?.textContent ?? '') : undefined;
    });
    if (label === undefined) {
      const isField = await this.page.evaluate(() => document.activeElement?.matches('input[data-field]'));
      // what is filled in already is left as it is
      if (isField) await this.page.keyboard.press('Enter');
      return isField === true && (await this.movedOn());
    }
    const known = Object.entries(this.left).find(
      ([name, values]) => new RegExp(name).test(label) && values.length > 0,
    );
    const text = known?.[1].shift();
    if (text !== undefined) {
      this.effort.fields++;
      await this.page.keyboard.type(text);
    }
    const at = await this.place();
    await this.page.keyboard.press('Enter');
    await this.page.waitForTimeout(120);
    return text !== undefined || (await this.place()) !== at;
  }

  private async movedOn(): Promise<boolean> {
    const at = await this.place();
    await this.page.waitForTimeout(120);
    return (await this.place()) !== at;
  }

  private place(): Promise<string | undefined> {
    return this.page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset.path);
  }

  /** With the pointer: what is out of sight is scrolled to first. */
  private async press(target: ReturnType<Page['locator']>, name: string): Promise<void> {
    await target.waitFor();
    const height = this.page.viewportSize()?.height ?? 0;
    for (let turn = 0; turn < 40; turn++) {
      const box = await target.boundingBox();
      if (!box) throw new Error(`${name} has no place on the screen`);
      const middle = box.y + box.height / 2;
      if (middle > 0 && middle < height) break;
      this.effort.scrolls++;
      await this.page.mouse.move(this.page.viewportSize()!.width / 2, height / 2);
      await this.page.mouse.wheel(0, Math.sign(middle) * 0.8 * height);
      await this.page.waitForTimeout(60);
    }
    this.effort.clicks++;
    this.effort.pressed.push(name);
    await target.click();
  }

  private async countWords(): Promise<void> {
    const { pathname } = new URL(this.page.url());
    const screen = pathname.replace(/^\/builds\/[^/]+\//, '');
    if (this.effort.words[screen] !== undefined) return;
    // as the eye meets it, without what is folded away
    const text = (await this.page.locator('main').allInnerTexts()).join(' ');
    this.effort.words[screen] = text.split(/\s+/).filter((word) => /\p{L}{2}/u.test(word)).length;
  }

  private state(): Promise<string> {
    return this.page.evaluate(() => {
      const values = [...document.querySelectorAll('input')].map(({ value }) => value).join('|');
      const focused = (document.activeElement as HTMLElement | null)?.dataset.path;
      const next = document.querySelector('.next-line')?.textContent;
      return [location.pathname, focused, next, values, document.body.textContent?.length].join(' ');
    });
  }

  /** What was done shows; where nothing does for ten seconds, the path has come to an end. */
  private async settled(before: string): Promise<void> {
    for (let wait = 0; wait < 100; wait++) {
      await this.page.waitForTimeout(100);
      if ((await this.state()) === before) continue;
      // a person looks up; by then the cursor stands where it is led to
      await this.page.waitForTimeout(400);
      return;
    }
    const next = await this.page.locator('.next-line').allInnerTexts();
    throw new Error(
      `a dead end at ${this.page.url()}: “${next.join(' ')}”, after ${this.effort.pressed.join(' · ')}`,
    );
  }
}

async function nameOf(target: ReturnType<Page['locator']>): Promise<string> {
  return ((await target.getAttribute('aria-label')) ?? (await target.textContent()) ?? '').trim();
}

async function isSeen(target: ReturnType<Page['locator']>): Promise<boolean> {
  return (await target.count()) > 0 && (await target.first().isVisible());
}
