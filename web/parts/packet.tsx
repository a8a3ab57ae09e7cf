import './packet.css'
import { counted } from '#web/form/number-words.ts'
import { SkeinDot, type SkeinShape } from '#web/parts/skein-dot.tsx'

export type PacketProps = {
  /** The skeins in it; none: not planned yet. */
  readonly skeins: readonly SkeinShape[]
  /** What a screen reader hears before the count: “Session 1, 35 min”. */
  readonly name: string
}

/** A packet or pot of the plan, with a lid, holding its skeins: `<Packet name="Session 1, 35 min" skeins={['treated']} />` */
export function Packet({ skeins, name }: PacketProps) {
  const planned = skeins.length > 0
  return (
    <div class={planned ? 'packet' : 'packet packet-unplanned'}>
      <span class="visually-hidden">
        {name}: {planned ? counted(skeins.length, 'skein') : 'not planned yet'}
      </span>
      {skeins.map((shape, place) => (
        <SkeinDot key={place} shape={shape} />
      ))}
    </div>
  )
}
