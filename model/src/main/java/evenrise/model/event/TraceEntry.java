package evenrise.model.event;

import java.util.Optional;

/**
 * One thing that happened.
 *
 * @param atSeconds from the script's zero
 * @param load the load whose breaker it is about, where it is about one
 * @param text what happened, in words
 * @param loadsOn switched loads whose breaker is closed now
 * @param shown what the operator is shown now
 * @param locked whether the lock is on now
 */
public record TraceEntry(
        double atSeconds,
        EntryKind kind,
        Optional<String> load,
        String text,
        int loadsOn,
        Display shown,
        boolean locked) {}
