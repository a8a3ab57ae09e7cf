import './button.css'
import type { ComponentChildren } from 'preact'

/** `do`: the one thing to do next, once a view. `box`: another thing. `plain`: a word in the text. */
export type ButtonKind = 'do' | 'box' | 'plain'

export type ButtonProps = {
  readonly kind?: ButtonKind
  readonly type?: 'button' | 'submit'
  readonly onPress?: () => void
  /** What it waits for, as “session 3”: the button then says so, can still be found by keyboard, and does nothing. */
  readonly waitsFor?: string | undefined
  /** What it is doing, as “Keeping …”. */
  readonly busy?: string | undefined
  /** 40 px on a desk, for buttons inside notes and rows. */
  readonly small?: boolean
  readonly pressed?: boolean
  readonly expanded?: boolean
  readonly controls?: string
  /** A fuller name where several buttons say the same word: “Read the dry skeins, session 2”. It begins with the word shown. */
  readonly name?: string | undefined
  readonly children: ComponentChildren
}

/** A button. `<Button kind="do" onPress={lock} busy={locking ? 'Locking …' : undefined}>Lock the rule</Button>` */
export function Button(props: ButtonProps) {
  const { kind = 'box', type = 'button', onPress, waitsFor, busy, small = false } = props
  const idle = waitsFor === undefined && busy === undefined
  return (
    <button
      type={type}
      class={`button button-${kind}${small ? ' button-small' : ''}`}
      aria-disabled={idle ? undefined : true}
      data-waits={waitsFor === undefined ? undefined : true}
      aria-busy={busy === undefined ? undefined : true}
      aria-pressed={props.pressed}
      aria-expanded={props.expanded}
      aria-controls={props.controls}
      aria-label={idle ? props.name : undefined}
      onClick={(event) => {
        if (idle) onPress?.()
        else event.preventDefault()
      }}
    >
      {waitsFor !== undefined ? `Waits for ${waitsFor}` : (busy ?? props.children)}
    </button>
  )
}

export type LinkButtonProps = {
  readonly href: string
  readonly kind?: ButtonKind
  readonly small?: boolean
  readonly name?: string | undefined
  readonly download?: boolean
  /** For pages of the server’s own, such as a sheet: they open beside this one. */
  readonly beside?: boolean
  readonly children: ComponentChildren
}

/** A link that looks like a button, for going somewhere. `<LinkButton kind="do" href="/trials/new">Start a trial</LinkButton>` */
export function LinkButton({
  href,
  kind = 'box',
  small = false,
  name,
  download,
  beside,
  children,
}: LinkButtonProps) {
  return (
    <a
      class={`button button-${kind}${small ? ' button-small' : ''}`}
      href={href}
      aria-label={name}
      download={download}
      target={beside ? '_blank' : undefined}
    >
      {children}
    </a>
  )
}
