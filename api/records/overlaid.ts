/** A record as it will be: what was sent over what stands; what was not sent stays. */
export function overlaid<Before extends object, Sent extends object>(
  before: Before,
  sent: Sent,
): Omit<Before, keyof Sent> & { [Key in keyof Sent]-?: Exclude<Sent[Key], undefined> } {
  const defined = Object.entries(sent).filter(([, value]) => value !== undefined)
  return { ...before, ...Object.fromEntries(defined) } as never
}
