import '../src/components/cards/beach-card.ts';
import { openCard } from './card.ts';

openCard(document.querySelector('beach-card')!);
