/** The look of the interface page; served as a file, because the policy of the server allows no style in the page. */
export const API_PAGE_STYLE = `
:root { color-scheme: light dark; font: 16px/1.5 system-ui, sans-serif; }
body { max-width: 76rem; margin: 0 auto; padding: 1rem 1.5rem 4rem; }
h1 { font-size: 1.6rem; } h2 { margin-top: 2.5rem; border-bottom: 1px solid; } h3 { font-size: 1rem; margin: 1.8rem 0 0.3rem; }
nav ul { display: flex; flex-wrap: wrap; gap: 0.3rem 1.2rem; padding: 0; list-style: none; }
article p { margin: 0.3rem 0; }
table { border-collapse: collapse; width: 100%; margin: 0.5rem 0; font-size: 0.9rem; }
th, td { text-align: left; vertical-align: top; padding: 0.25rem 0.6rem; border-bottom: 1px solid color-mix(in srgb, currentColor 25%, transparent); overflow-wrap: anywhere; }
code { font-family: ui-monospace, monospace; font-size: 0.92em; }
a { color: LinkText; } a:focus-visible { outline: 3px solid; outline-offset: 2px; }
@media print { nav { display: none; } article { break-inside: avoid; } }
`;
