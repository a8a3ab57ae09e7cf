import { useEffect, useState } from 'preact/hooks'

/** The word shown while something is read, and only if it takes longer than 300 ms: nothing moves meanwhile. */
export function Reading() {
  const [long, setLong] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setLong(true), 300)
    return () => clearTimeout(timer)
  }, [])
  return (
    <p class="soft" role="status">
      {long ? 'Reading …' : ''}
    </p>
  )
}
