/** The address of another database on the same server. */
export function databaseAt(url: string, name: string): string {
  const address = new URL(url)
  address.pathname = `/${name}`
  return address.href
}
