package evenrise.solver.intake;

import evenrise.model.contract.Phrase;
import evenrise.solver.table.HeaderWords;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Several sheets of one workbook that were added up: where their names sound like alternates, somebody has to say so. */
final class AlternateSheets {
    private static final Pattern ALTERNATE =
            Pattern.compile("\\b(option|alternat|alternativ|variant|opcion|base bid|alt [a-z0-9]\\b|entweder|oder\\b)");
    private static final int MOST_NAMED = 6;

    private AlternateSheets() {}

    static Optional<Notice> of(List<ReadList> lists) {
        if (lists.size() < 2) {
            return Optional.empty();
        }
        List<String> names = lists.stream().map(ReadList::sheet).toList();
        String text = "sheets " + Phrase.quoted(names, MOST_NAMED) + " are added up";
        boolean soundsSo = names.stream()
                .anyMatch(name -> ALTERNATE.matcher(HeaderWords.words(name)).find());
        return Optional.of(
                soundsSo
                        ? new Notice(
                                Notice.Kind.QUESTION,
                                "",
                                text
                                        + ": is one of them an alternate of another? Then import each apart"
                                        + " (--alternates), and what is offered is not the sum of both.")
                        : Notice.guess(text + "; where they are alternates: --alternates"));
    }
}
