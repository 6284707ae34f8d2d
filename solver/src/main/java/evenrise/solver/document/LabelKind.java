package evenrise.solver.document;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What labels on stock sheets are for. */
public enum LabelKind {
    /** One at each breaker. */
    BREAKER,
    /** One at each end of a load's cable and of a panel's feeder. */
    CABLE,
    /** One at each end of a control lead. */
    LEAD,
    /** One on each piece of equipment, with its fault current. */
    EQUIPMENT;

    public static final List<LabelKind> ALL = List.of(values());

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Empty where no kind is called so. */
    public static Optional<LabelKind> of(String word) {
        return Arrays.stream(values())
                .filter(each -> each.word().equals(word.strip()))
                .findFirst();
    }
}
