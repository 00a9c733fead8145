// An svg element of the subset arrives; a scene leaves, or what the subset refuses.
import { type Checked, type Problem, faulty, fine } from '../../problem.js';
import type { Direction, Scene, Shape } from '../block.js';
import { type Element, type Node, isElement, markupProblem, parseMarkup } from '../parse-markup.js';
import { textOf } from '../read-runs.js';

/**
 * Reads the text of one picture.
 * @example readSvg(writeSvg(scene), 'letter') // the same scene
 */
export function readSvg(svg: string, file: string): Checked<Scene> {
  const tree = parseMarkup(svg, file);
  if (!tree.ok) return tree;
  const [element, ...more] = tree.value.filter(
    (node) => isElement(node) || node.text.trim() !== '',
  );
  if (element === undefined || !isElement(element) || element.tag !== 'svg' || more.length > 0) {
    return faulty([markupProblem(file, 1, 'read the picture', 'one <svg> and nothing beside it')]);
  }
  return readSvgElement(element, file);
}

/** Reads a picture already parsed. Problems: no size, no title or description, a foreign shape, a missing number. */
export function readSvgElement(svg: Element, file: string): Checked<Scene> {
  const problems: Problem[] = [];
  const size = /^0 0 (\S+) (\S+)$/.exec(svg.attributes.viewBox ?? '');
  const children = svg.children.filter((node) => isElement(node) || node.text.trim() !== '');
  const words = (tag: string) => {
    const text = children.filter(isElement).find((child) => child.tag === tag);
    return text === undefined ? '' : textOf(text).trim();
  };
  const title = words('title');
  const description = words('desc');
  if (size === null) problems.push(markupProblem(file, svg.line, 'read <svg>', 'a viewBox'));
  if (title === '' || description === '') {
    problems.push(markupProblem(file, svg.line, 'read <svg>', 'a title and a desc in words'));
  }
  const shapes = children.flatMap((child) => readShape(child, file, problems));
  if (problems.length > 0) return faulty(problems);
  return fine({
    width: Number(size?.[1]),
    height: Number(size?.[2]),
    title,
    description,
    shapes,
  });
}

function readShape(node: Node, file: string, problems: Problem[]): readonly Shape[] {
  if (!isElement(node)) {
    problems.push(markupProblem(file, node.line, 'place text directly in <svg>', '<text>'));
    return [];
  }
  const { attributes } = node;
  const look = attributes.class;
  if (node.tag === 'title' || node.tag === 'desc') return [];
  const number = (name: string, otherwise?: number) => {
    const value = attributes[name];
    if (value !== undefined) return Number(value);
    if (otherwise !== undefined) return otherwise;
    problems.push(markupProblem(file, node.line, `read <${node.tag}>`, `the attribute ${name}`));
    return 0;
  };
  if (look === undefined) {
    problems.push(
      markupProblem(file, node.line, `read <${node.tag}>`, 'a class from the table of look'),
    );
    return [];
  }
  switch (node.tag) {
    case 'rect':
      return [
        {
          kind: 'rect',
          look,
          x: number('x', 0),
          y: number('y', 0),
          width: number('width'),
          height: number('height'),
          radius: number('rx', 0),
        },
      ];
    case 'circle':
      return [{ kind: 'circle', look, x: number('cx'), y: number('cy'), r: number('r') }];
    case 'line':
      return [
        {
          kind: 'line',
          look,
          x1: number('x1'),
          y1: number('y1'),
          x2: number('x2'),
          y2: number('y2'),
        },
      ];
    case 'path':
      if (attributes.d === undefined) number('d');
      return [{ kind: 'path', look, d: attributes.d ?? '' }];
    case 'text':
      return [
        {
          kind: 'text',
          look,
          x: number('x'),
          y: number('y'),
          size: number('font-size'),
          anchor: anchorOf(attributes['text-anchor']),
          strong: attributes['font-weight'] === 'bold',
          lang: attributes.lang ?? null,
          dir: directionOf(attributes.direction),
          text: textOf(node),
        },
      ];
    default:
      problems.push(
        markupProblem(file, node.line, `draw <${node.tag}>`, 'rect, circle, line, path or text'),
      );
      return [];
  }
}

function anchorOf(value: string | undefined): 'start' | 'middle' | 'end' {
  return value === 'middle' || value === 'end' ? value : 'start';
}

function directionOf(value: string | undefined): Direction | null {
  return value === 'ltr' || value === 'rtl' ? value : null;
}
