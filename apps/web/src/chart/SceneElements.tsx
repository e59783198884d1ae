import type { SceneNode } from '@pullbook/charts';
import { createElement, type ReactNode } from 'react';

/** `stroke-width` as React wants it: `strokeWidth`. */
const reactNames = new Map<string, string>();
function reactName(attribute: string): string {
  let name = reactNames.get(attribute);
  if (name === undefined) {
    name =
      attribute === 'class'
        ? 'className'
        : attribute.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
    reactNames.set(attribute, name);
  }
  return name;
}

function element(node: SceneNode, key: number): ReactNode {
  const properties: Record<string, string | number> = { key };
  for (const [name, value] of Object.entries(node.attributes)) properties[reactName(name)] = value;
  const children = node.children.map(element);
  return createElement(node.tag, properties, ...(node.text === undefined ? [] : [node.text]), ...children);
}

/** A finished drawing's nodes as elements of the page: the same nodes that a still is written from. */
export function SceneElements({ nodes }: { nodes: SceneNode[] }) {
  return nodes.map(element);
}
