package chinelog.audit;

import chinelog.problem.Sentence;

/**
 * Something that must not be there, or that could not be searched.
 *
 * @param file below the edition's folder
 * @param where in the file, in words
 * @param what was found, in words the maker understands
 */
public record Finding(String file, Sentence where, Sentence what) {}
