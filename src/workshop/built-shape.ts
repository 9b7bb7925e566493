/** What the workshop builds so that the foil flies as the document draws it. */
export { builtDesign as shapeToBuild } from '../solver/studies/built-shape.ts';
