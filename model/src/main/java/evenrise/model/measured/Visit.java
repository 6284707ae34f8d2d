package evenrise.model.measured;

import java.util.Optional;

/**
 * When and with what something was read, and where that stands.
 *
 * @param date as ISO 8601 has it
 * @param at file and row
 */
public record Visit(Optional<String> date, Meter meter, String at) {}
