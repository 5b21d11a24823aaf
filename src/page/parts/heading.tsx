import type { ComponentChildren } from 'preact'

/** A heading that hangs on a line with a slot cut in it. */
export const Heading = ({
  id,
  children,
  aside,
}: {
  id: string
  children: ComponentChildren
  aside?: ComponentChildren
}) => (
  <div class="hung">
    <h2 id={id}>{children}</h2>
    {aside !== undefined && <p class="aside">{aside}</p>}
  </div>
)
