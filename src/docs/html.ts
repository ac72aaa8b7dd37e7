import { escaped } from '../views/markup-text.ts'

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
