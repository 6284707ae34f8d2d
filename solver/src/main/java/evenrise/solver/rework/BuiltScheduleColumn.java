package evenrise.solver.rework;

import evenrise.solver.table.HeaderWords;
import java.util.List;

/** What a column of a panel schedule says; it may be called by any of its names. */
enum BuiltScheduleColumn {
    PANEL("panel", "distribution board", "panelboard", "enclosure"),
    SLOT("slot", "slots", "way", "ways", "circuit no", "circuit number", "position", "pole no"),
    LOAD("load", "load id", "id", "circuit", "feeds", "description", "name"),
    BREAKER("breaker", "breaker a", "rating", "rating a", "rated a", "trip a", "mcb", "ocpd", "device"),
    POLES("poles", "no of poles", "pole count"),
    CONTROL("control", "control lead", "switched by"),
    BOARD("board", "control board"),
    OUTPUT("output", "relay", "control output"),
    START_DELAY("start delay s", "start delay", "board start s"),
    STEP("step s", "step", "board step s");

    private final List<String> names;

    BuiltScheduleColumn(String... names) {
        this.names = List.of(names);
    }

    /** How many names it may have. */
    int names() {
        return names.size();
    }

    /** Whether a header is one of its names, without regard to case, units in brackets and what joins words. */
    boolean isNamed(int which, String header) {
        return HeaderWords.plain(header.replace('_', ' ')).equals(HeaderWords.plain(names.get(which)));
    }
}
