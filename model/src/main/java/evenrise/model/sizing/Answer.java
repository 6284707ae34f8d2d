package evenrise.model.sizing;

import java.util.Optional;

/**
 * What one criterion asks of a place.
 *
 * @param least the least standard size that satisfies it by itself; empty where none does
 * @param figure at the size proposed, with its arithmetic; may be empty
 * @param below the last size tried that does not satisfy it; empty where the first does
 * @param why it does not, with figure, limit and clause; else empty
 */
public record Answer(String criterion, Optional<Size> least, String figure, Optional<Size> below, String why) {}
