/** Waiting items of several clients; each client in turn has its oldest one taken, however many another has put in. */
export interface FairQueue<Item> {
  add: (client: string, item: Item) => void
  next: () => Item | undefined
  /** Takes out an item whose client no longer waits. */
  drop: (client: string, item: Item) => void
  /** How many wait, of one client or of all. */
  waiting: (client?: string) => number
}

export function fairQueue<Item>(): FairQueue<Item> {
  // A Map keeps its keys in the order they were put in: the client served longest ago stands first.
  const lines = new Map<string, Item[]>()
  return {
    add(client, item) {
      const line = lines.get(client)
      if (line === undefined) lines.set(client, [item])
      else line.push(item)
    },
    next() {
      for (const [client, line] of lines) {
        const item = line.shift()
        lines.delete(client)
        if (line.length > 0) lines.set(client, line)
        if (item !== undefined) return item
      }
      return undefined
    },
    drop(client, item) {
      const left = (lines.get(client) ?? []).filter((other) => other !== item)
      if (left.length > 0) lines.set(client, left)
      else lines.delete(client)
    },
    waiting(client) {
      if (client !== undefined) return lines.get(client)?.length ?? 0
      return [...lines.values()].reduce((sum, line) => sum + line.length, 0)
    },
  }
}
