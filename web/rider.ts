import '../src/components/cards/rider-page.ts';
import { openCard } from './card.ts';

openCard(document.querySelector('rider-page')!);
