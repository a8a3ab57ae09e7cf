import { useState } from 'preact/hooks'

export type Keeping = {
  readonly busy: boolean
  /** What was refused; undefined while nothing is. */
  readonly refused: unknown
  /** True after it was kept, until the next change. */
  readonly kept: boolean
  readonly keep: (work: () => Promise<unknown>) => Promise<boolean>
  readonly changed: () => void
}

/** One thing that is being kept: busy, kept, or refused. `const keeping = useKeeping()` */
export function useKeeping(): Keeping {
  const [state, setState] = useState<{ busy: boolean; kept: boolean; refused: unknown }>({
    busy: false,
    kept: false,
    refused: undefined,
  })
  return {
    ...state,
    keep: async (work) => {
      setState({ busy: true, kept: false, refused: undefined })
      try {
        await work()
        setState({ busy: false, kept: true, refused: undefined })
        return true
      } catch (refused) {
        setState({ busy: false, kept: false, refused })
        return false
      }
    },
    changed: () => setState((now) => (now.kept ? { ...now, kept: false } : now)),
  }
}
