package evenrise.model.rules;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.contract.Words;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.BrokenRuleBuilder;
import evenrise.model.plan.FindingText;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Gathers the parts of one broken rule; each part is a word of {@link BrokenKind}, too. */
final class Broken {
    private final BrokenKind kind;
    private final List<Subject> subjects = new ArrayList<>();
    private final Map<String, String> words = new HashMap<>();
    private final BrokenRuleBuilder made = BrokenRule.builder();

    private Broken(BrokenKind kind) {
        this.kind = kind;
    }

    static Broken by(BrokenKind kind) {
        return new Broken(kind);
    }

    Broken load(String id) {
        return one("load", SubjectKind.LOAD, id);
    }

    /** A second load that it takes two to break the rule. */
    Broken other(String id) {
        return one("other", SubjectKind.LOAD, id);
    }

    Broken panel(String id) {
        return one("panel", SubjectKind.PANEL, id);
    }

    Broken board(String id) {
        return one("board", SubjectKind.BOARD, id);
    }

    Broken group(String id) {
        return one("group", SubjectKind.GROUP, id);
    }

    /** The supply, a panel or a further node. */
    Broken node(NodeLimits limits) {
        subjects.add(new Subject(limits.kind(), limits.node()));
        return word("node", limits.label());
    }

    Broken one(String name, SubjectKind of, String id) {
        add(of, id);
        return word(name, Phrase.quoted(id));
    }

    Broken all(String name, SubjectKind of, Collection<String> ids) {
        ids.forEach(id -> add(of, id));
        return word(name, RuleWords.quoted(ids));
    }

    /** A plan that was written by hand may name what has no id at all. */
    private void add(SubjectKind of, String id) {
        if (!id.isBlank()) {
            subjects.add(new Subject(of, id));
        }
    }

    /** Something that has no part of its own, in the words of the text. */
    Broken word(String name, Object text) {
        words.put(name, String.valueOf(text));
        return this;
    }

    Broken at(String place) {
        made.place(place);
        return this;
    }

    /** As many digits as tell the figure from what it is held against. */
    Broken figure(double figure, double limit, String unit) {
        word("figure", shown(figure, limit, unit));
        word("limit", shown(limit, figure, unit));
        if (Double.isFinite(figure)) {
            made.figure(figure);
        }
        if (Double.isFinite(limit)) {
            made.limit(limit);
        }
        made.unit(unit);
        return this;
    }

    /** A figure that nothing is held against. */
    Broken figure(double figure, String unit) {
        word("figure", shown(figure, figure, unit));
        made.figure(figure).unit(unit);
        return this;
    }

    /** A time beside the one that it should be; there may be none. */
    Broken times(OptionalDouble seconds, double wantedSeconds) {
        made.figure(seconds).limit(wantedSeconds).unit("s");
        return this;
    }

    private static String shown(double figure, double beside, String unit) {
        return Decimals.toThousandths(figure, beside) + (unit.isEmpty() ? "" : " " + unit);
    }

    Broken clause(String clause) {
        made.clause(clause);
        return this;
    }

    BrokenRule build() {
        String cure = FindingText.filled(kind.cure(), words);
        return made.rule(kind.rule())
                .kind(Words.word(kind))
                .subjects(subjects)
                .cure(cure)
                .message(FindingText.of(FindingText.filled(kind.statement(), words), cure))
                .build();
    }
}
