import type { Locator, Page } from 'playwright-core'

/** So many presses of the Tab key are taken to reach a thing, before it is said to be out of reach. */
const mostStops = 60

export type Keyboard = {
  /** Tabs on until the thing has the focus. */
  to(thing: Locator): Promise<void>
  /** Tabs to a thing and presses Enter on it. */
  press(thing: Locator): Promise<void>
  /** Tabs to a field and types into it, over what stands there. */
  type(field: Locator, text: string): Promise<void>
  /** Tabs to a field and pastes into it, as from a spreadsheet. */
  paste(field: Locator, text: string): Promise<void>
  /** Tabs to a list and goes down it to this option. */
  choose(list: Locator, option: string): Promise<void>
}

/** A person without a mouse: every step is a key, and what no key reaches is a failure. */
export function byKeyboard(page: Page): Keyboard {
  const to = async (thing: Locator): Promise<void> => {
    await thing.waitFor()
    for (let stop = 0; stop < mostStops; stop += 1) {
      if (await thing.evaluate((element) => element === document.activeElement)) return
      await page.keyboard.press('Tab')
    }
    throw new Error(`${mostStops} presses of Tab do not reach ${String(thing)}.`)
  }
  return {
    to,
    press: async (thing) => {
      await to(thing)
      await page.keyboard.press('Enter')
    },
    type: async (field, text) => {
      await to(field)
      await page.keyboard.press('ControlOrMeta+A')
      await page.keyboard.type(text)
    },
    paste: async (field, text) => {
      await to(field)
      await page.keyboard.insertText(text)
    },
    choose: async (list, option) => {
      await to(list)
      const options = await list.locator('option').allInnerTexts()
      const wanted = options.indexOf(option)
      if (wanted < 0) throw new Error(`“${option}” is none of ${options.join(', ')}.`)
      const at = await list.evaluate((it) => (it as HTMLSelectElement).selectedIndex)
      for (let step = 0; step < Math.abs(wanted - at); step += 1)
        await page.keyboard.press(wanted > at ? 'ArrowDown' : 'ArrowUp')
    },
  }
}
