package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import java.util.SortedSet;
import java.util.TreeSet;

/** The signs that a document's texts are made of. */
final class UsedCharacters {
    private UsedCharacters() {}

    static SortedSet<Integer> of(Document document, ShownTables tables) {
        SortedSet<Integer> signs = new TreeSet<>();
        add(
                signs,
                document.imprint().project()
                        + document.imprint().revision()
                        + document.imprint().date());
        document.imprint().titles().forEach(fact -> add(signs, fact.name() + fact.value()));
        add(signs, document.imprint().sheet(0, 0));
        document.imprint()
                .revisions()
                .forEach(each -> add(signs, each.revision() + each.date() + each.what() + each.by()));
        document.findings().forEach(text -> add(signs, text));
        document.tables()
                .all()
                .forEach(table -> tables.of(table).cells().forEach(row -> row.forEach(cell -> add(signs, cell))));
        add(signs, document.tables().bill().note());
        document.schedules().forEach(schedule -> {
            add(signs, schedule.panel());
            schedule.head().forEach(fact -> add(signs, fact.value() + fact.note()));
        });
        document.diagrams()
                .forEach(diagram -> diagram.blocks().forEach(block -> {
                    add(signs, block.name() + block.device());
                    block.lead().forEach(line -> add(signs, line));
                    block.lines().forEach(line -> add(signs, line));
                }));
        signs.removeIf(Character::isWhitespace);
        return signs;
    }

    private static void add(SortedSet<Integer> signs, String text) {
        text.codePoints().forEach(signs::add);
    }
}
