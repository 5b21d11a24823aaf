import { signal } from '@preact/signals'

/** Whether the job has a card that can be printed. */
export const hasCard = signal(false)

let rules: CSSStyleSheet | undefined

/** The face that the page has already is the card's own; those that the card's file carries are not to be had here. */
const withOurFace = (style: string): string =>
  style
    .replace(/@font-face\s*\{[^}]*\}/g, '')
    .replaceAll('"Atkinson Hyperlegible Next"', '"Atkinson Hyperlegible Next Variable"')
    .replace(/(^|\n|\}|\s)html(?=\s*\{)/g, '$1:host')

/** Lays the job card behind the page, in a place of its own, so that printing gives the card and never the screen. */
export const layCard = (card: { readonly style: string; readonly main: string } | undefined): void => {
  const place = document.getElementById('card')
  if (!place) return
  const root = place.shadowRoot ?? place.attachShadow({ mode: 'open' })
  const style = withOurFace(card?.style ?? '')
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(style)
  root.adoptedStyleSheets = [sheet]
  root.innerHTML = card ? `<main>${card.main}</main>` : ''
  // The size of the paper is the whole document's to say.
  const paper = new CSSStyleSheet()
  paper.replaceSync(style.match(/@page[^{]*\{(?:[^{}]|\{[^}]*\})*\}/g)?.join('\n') ?? '')
  document.adoptedStyleSheets = [...document.adoptedStyleSheets.filter((each) => each !== rules), paper]
  rules = paper
  hasCard.value = card !== undefined
  document.documentElement.classList.toggle('has-card', card !== undefined)
}
