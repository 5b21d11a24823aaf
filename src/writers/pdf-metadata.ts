/** What a PDF says of itself to programs that look for nothing else: XMP, ISO 16684-1. */
import { escaped } from './svg.ts'

/** Title, maker and day; indented as pdfkit has it. */
export const metadataOf = (title: string, maker: string, day: string): string =>
  `<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/">
                <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
${' '.repeat(8)}
        <rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
            <xmp:CreateDate>${day}</xmp:CreateDate>
            <xmp:CreatorTool>${maker}</xmp:CreatorTool>
        </rdf:Description>
${' '.repeat(8)}

            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">
${' '.repeat(12)}

                <dc:title>
                    <rdf:Alt>
                        <rdf:li xml:lang="x-default">${escaped(title)}</rdf:li>
                    </rdf:Alt>
                </dc:title>
${' '.repeat(16)}

            </rdf:Description>
${' '.repeat(12)}

        <rdf:Description rdf:about="" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
            <pdf:Producer>${maker}</pdf:Producer>
        </rdf:Description>
${' '.repeat(8)}

                </rdf:RDF>
            </x:xmpmeta>
        <?xpacket end="w"?>`
