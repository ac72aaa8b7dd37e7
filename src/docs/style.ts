/** One style for every page: large enough to read across a bench, light and dark. */
export const style = `:root { color-scheme: light dark }
body { font: 18px/1.5 system-ui, sans-serif; overflow-wrap: break-word; margin: 0 }
main { max-width: 60rem; margin: 0 auto; padding: 1rem }
h1, h2, h3 { line-height: 1.2 }
h2 { border-top: 1px solid; padding-top: 1rem; margin-top: 2.5rem }
code, pre { font-family: ui-monospace, monospace; font-size: 0.85em; overflow-wrap: anywhere }
pre { white-space: pre-wrap; padding: 0.75rem; border: 1px solid; border-radius: 0.25rem }
table { border-collapse: collapse; width: 100% }
th, td { text-align: left; vertical-align: top; padding: 0.3rem 0.75rem 0.3rem 0; border-bottom: 1px solid }
a:focus-visible { outline: 3px solid; outline-offset: 2px }
@media (max-width: 40rem) {
  thead { display: none }
  table, tbody, tr, th, td { display: block }
  tr { border-bottom: 1px solid; padding: 0.3rem 0 }
  th, td { border: 0; padding: 0 }
}
`
