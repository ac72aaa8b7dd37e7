/** Text made safe to stand in HTML or XML, in an attribute too. */
export const escaped = (text: string): string =>
  text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`)
