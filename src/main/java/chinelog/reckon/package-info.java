/**
 * Yields facts from facts and tables: {@link chinelog.reckon.Reckoner}.
 *
 * <p>Facts that are named by the reckoner, {@code ENTRY}, {@code STAGE} and {@code MATERIAL} being
 * ids in which every other character than a letter, a digit and {@code _} has become {@code _}:
 *
 * <ul>
 *   <li>{@code scale}, {@code rate}, {@code budget.NAME}: what log.yaml says
 *   <li>{@code hours.entry.ENTRY}, {@code hours.stage.STAGE}, {@code hours.week.2026_w12}, {@code
 *       hours.total}: time at work, in minutes
 *   <li>{@code plan.hours.stage.STAGE}, {@code plan.hours.total}: time planned; {@code plan.due},
 *       {@code plan.earned}, {@code plan.schedule_index}, {@code plan.cost_index}, {@code
 *       plan.forecast}, {@code plan.days}, {@code plan.forecast_days}: how the build stands
 *   <li>{@code labour.total}: hours at the rate
 *   <li>{@code mass.PART}, {@code mass.PART.x}, {@code mass.PART.z}, {@code mass.total}; {@code
 *       growth.ENTRY.PART}: all that was weighed so far
 *   <li>{@code stock.MATERIAL.lot_1.bought}, {@code .lot_1.price}, {@code .used.ENTRY} (a second
 *       use in one entry ends in {@code .2}), {@code .bought}, {@code .used}, {@code .left}, {@code
 *       .paid}, {@code .cost} (of what was used), {@code .worth} (of what is left)
 *   <li>{@code cost.use.MATERIAL.ENTRY}, {@code cost.entry.ENTRY}, {@code cost.stage.STAGE}, {@code
 *       cost.total}: material used, first in, first out
 *   <li>{@code limit.ID}: the left side of a limit that is more than one name
 *   <li>{@code NAME.at_ENTRY}: an earlier measurement or weighing; {@code NAME.planned}: what
 *       facts.yaml says of something that was then measured
 * </ul>
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.reckon;

import org.jspecify.annotations.NullMarked;
