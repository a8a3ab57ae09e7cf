/** A record as it will be: what was sent over what stands; what was not sent stays. */
export function overlaid<Before extends object>(
  before: Before,
  sent: { readonly [Key in keyof Before]?: Before[Key] | undefined },
): Before {
  const after = { ...before }
  for (const [key, value] of Object.entries(sent))
    if (value !== undefined) Object.assign(after, { [key]: value })
  return after
}
