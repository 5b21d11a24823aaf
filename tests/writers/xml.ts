/** A strict little reader of XML for the tests: tags must close in order, attributes be quoted, text hold no bare sign of markup. */
export interface Tag {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly content: (Tag | string)[]
}

const entities: Record<string, string> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"' }

function plain(text: string): string {
  return text.replaceAll(/&[^;]*;?|[<>]/g, (found) => {
    const letter = entities[found]
    if (letter === undefined) throw new Error(`not well formed: ${found} in ${text}`)
    return letter
  })
}

/** The root tag. Throws on whatever is not well formed. */
export function tree(source: string): Tag {
  const open: Tag[] = [{ name: '', attributes: {}, content: [] }]
  for (const [whole, tag, text] of source.matchAll(/<([^<>]*)>|([^<]+)|</g)) {
    const top = open.at(-1)
    if (!top || whole === '<') throw new Error(`not well formed near ${whole}`)
    if (text !== undefined) top.content.push(plain(text))
    else if (tag?.startsWith('/')) {
      if (open.pop()?.name !== tag.slice(1) || open.length === 0) throw new Error(`<${tag}> closes what is not open`)
    } else if (tag !== undefined) {
      const parts = /^([a-z]+)((?:\s+[\w:-]+="[^"<>]*")*)\s*(\/?)$/i.exec(tag)
      if (!parts) throw new Error(`not a tag: <${tag}>`)
      const pairs = [...(parts[2] ?? '').matchAll(/([\w:-]+)="([^"]*)"/g)].map(
        ([, name, value]) => [name ?? '', plain(value ?? '')] as const,
      )
      if (new Set(pairs.map(([name]) => name)).size < pairs.length) throw new Error(`an attribute twice: <${tag}>`)
      const found: Tag = { name: parts[1] ?? '', attributes: Object.fromEntries(pairs), content: [] }
      top.content.push(found)
      if (parts[3] === '') open.push(found)
    }
  }
  const roots = open[0]?.content.filter((each): each is Tag => typeof each !== 'string') ?? []
  const [root] = roots
  if (open.length !== 1 || roots.length !== 1 || !root) throw new Error('not one whole root')
  return root
}

export const children = (tag: Tag): readonly Tag[] =>
  tag.content.filter((each): each is Tag => typeof each !== 'string')
export const textOf = (tag: Tag): string => tag.content.filter((each) => typeof each === 'string').join('')
/** The tag and all below it. */
export const tagsOf = (tag: Tag): readonly Tag[] => [tag, ...children(tag).flatMap(tagsOf)]
