package evenrise.solver.rework;

import evenrise.solver.table.HeaderWords;
import java.util.List;
import java.util.OptionalDouble;

/** What a column says; it may be called by any of its names, the first of which is the one that we write. */
public enum MeasuredColumn {
    LOAD(true, "Load, by its id in the project", "load", "load_id", "id", "circuit", "breaker"),
    PHASE(false, "Phase that was read: its letter, or its number from 1", "phase", "line", "leg", "conductor"),
    RUNNING(
            false,
            "Rms line current at full design use, in ampere",
            "running_a",
            "running",
            "running_current",
            "current_a",
            "current",
            "amps",
            "amp",
            "measured_a",
            "full_a"),
    IDLE(
            false,
            "Rms line current right after power-up, before the show, in ampere",
            "idle_a",
            "idle",
            "idle_current",
            "standby_a",
            "standby",
            "quiescent_a");

    private final boolean isNeeded;
    private final String meaning;
    private final List<String> names;

    MeasuredColumn(boolean isNeeded, String meaning, String... names) {
        this.isNeeded = isNeeded;
        this.meaning = meaning;
        this.names = List.of(names);
    }

    /** Whether every row has to say it. */
    public boolean isNeeded() {
        return isNeeded;
    }

    public String meaning() {
        return meaning;
    }

    /** Without regard to case, units in brackets, and what joins words. */
    public List<String> names() {
        return names;
    }

    /** The most that may stand in it; empty where it is no number. */
    public OptionalDouble mostAmps() {
        return this == RUNNING || this == IDLE ? OptionalDouble.of(MeasuredCsv.MOST_AMPS) : OptionalDouble.empty();
    }

    /** Whether a header is one of its names. */
    boolean isHeadedBy(String header) {
        String plain = HeaderWords.plain(header);
        return names.stream().map(HeaderWords::plain).anyMatch(plain::equals);
    }
}
