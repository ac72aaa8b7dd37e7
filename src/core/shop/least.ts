/** The item with the least measure, or null of none. */
export function least<Item>(items: readonly Item[], measure: (item: Item) => number): Item | null {
  return items.reduce<Item | null>(
    (best, item) => (best === null || measure(item) < measure(best) ? item : best),
    null,
  )
}

/** Every pair of items, each once. */
export const pairs = <Item>(items: readonly Item[]): [Item, Item][] =>
  items.flatMap((first, index) => items.slice(index + 1).map((second): [Item, Item] => [first, second]))
