import { escaped, PALETTE, type Scene, type SceneNode, sceneToSvg } from '@pullbook/charts';

/** Colours of drawings in light, each with what it is in the dark, as classes of one file. */
export class ThemedColours {
  private readonly places = new Map<string, number>();

  classFor(attribute: 'fill' | 'stroke', light: string, dark: string): string {
    const key = `${light} ${dark}`;
    const place = this.places.get(key) ?? this.places.size;
    this.places.set(key, place);
    return `${attribute[0]}${place}`;
  }

  /** Rules for the dark; in light the drawing's own attributes hold. */
  get darkRules(): string {
    return [...this.places]
      .map(([key, place]) => {
        const dark = key.split(' ')[1]!;
        return `.f${place}{fill:${dark}}.s${place}{stroke:${dark}}`;
      })
      .join('');
  }
}

/**
 * One drawing for both themes: the light one as it is, each colour that is another in the dark named by a class, and each part of a
 * combination by `c0`, `c1`, …, so that a page can hide it.
 */
export function themedSvg(light: Scene, dark: Scene, colours: ThemedColours): string {
  const join = (node: SceneNode, other: SceneNode | undefined): SceneNode => {
    const classes: string[] = [];
    for (const attribute of ['fill', 'stroke'] as const) {
      const own = node.attributes[attribute];
      const its = other?.attributes[attribute];
      if (typeof own !== 'string' || typeof its !== 'string') continue;
      if (own !== its) classes.push(colours.classFor(attribute, own, its));
      const combination = PALETTE.findIndex((one) => one.light === own && one.dark === its);
      if (combination >= 0) classes.push(`c${combination}`);
    }
    const { class: _, ...attributes } = node.attributes;
    return {
      ...node,
      attributes: classes.length > 0 ? { ...attributes, class: classes.join(' ') } : attributes,
      children: node.children.map((child, place) => join(child, other?.children[place])),
    };
  };
  const nodes = light.nodes.map((node, place) => join(node, dark.nodes[place]));
  // As a label, since a page would show a title whenever the pointer rests.
  return sceneToSvg({ ...light, nodes, alternative: '' })
    .replace('<desc></desc>', '')
    .replace('role="img">', `role="img" aria-label="${escaped(light.alternative)}">`);
}
