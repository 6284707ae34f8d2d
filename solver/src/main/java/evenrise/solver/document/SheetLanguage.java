package evenrise.solver.document;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Languages that site sheets and labels are printed in. */
public enum SheetLanguage {
    EN,
    DE,
    FR;

    public static final List<SheetLanguage> ALL = List.of(values());

    /** Its code by ISO 639-1: {@code de}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Empty where no language is called so. */
    public static Optional<SheetLanguage> of(String word) {
        return Arrays.stream(values())
                .filter(each -> each.word().equals(word.strip()))
                .findFirst();
    }
}
