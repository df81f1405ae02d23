// What no figure can say, wherever the job is explained.
import { FOOD_CAUTION } from '../../core/says/food-caution-says';

export const FoodCaution = ({ className }: { readonly className: string }) => (
  <p className={className}>{FOOD_CAUTION}</p>
);
