/**
 * The desk's page of photographs: brought in, looked through, given to notes, worded, left out, put
 * under agreements, and covered in part: {@link chinelog.desk.photographs.Photographs}.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.desk.photographs;

import org.jspecify.annotations.NullMarked;
