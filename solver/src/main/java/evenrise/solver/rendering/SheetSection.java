package evenrise.solver.rendering;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Sections of the printed sheets behind the cover, in the order in which a job goes: judge, build, wire, set, try, label. A
 * section keeps its number whichever others are printed.
 */
public enum SheetSection {
    RULES,
    BEFORE,
    CHANGES,
    DISTRIBUTION,
    SEQUENCE,
    PHASES,
    TRANSFORMERS,
    UNSTATED,
    SCHEDULES,
    OVER_TIME,
    DRAWINGS,
    SETTINGS,
    LANDING,
    SHUTDOWN,
    FINDINGS,
    BILL,
    COMMISSIONING,
    MOTORS,
    LABELS,
    MARGINS,
    CHECKS,
    DIRECTORY,
    EQUIPMENT;

    public static final List<SheetSection> ALL = List.of(values());

    /** As it is asked for: {@code over-time}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** In the number of each of its sheets; the cover has 0. */
    int number() {
        return ordinal() + 1;
    }

    /** Whether it may stand on a page with others: not what is cut apart or filled in, nor the sequence. */
    private boolean mayShare() {
        return this != SEQUENCE && this != COMMISSIONING && this != LABELS;
    }

    /** Numbers of those that may stand on a page with others. */
    static Set<Integer> sharing() {
        return ALL.stream()
                .filter(SheetSection::mayShare)
                .map(SheetSection::number)
                .collect(Collectors.toSet());
    }

    /** Empty where no section is called so. */
    public static Optional<SheetSection> of(String word) {
        return Arrays.stream(values())
                .filter(each -> each.word().equals(word.strip()))
                .findFirst();
    }
}
