/** Text made safe to stand in HTML, in an attribute too. */
export const escaped = (text: string): string =>
  text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`)

/** A whole page; nothing in it comes from another host. */
export const page = (title: string, body: string): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="/docs/style.css">
</head>
<body>
<main>
${body}
</main>
</body>
</html>
`
