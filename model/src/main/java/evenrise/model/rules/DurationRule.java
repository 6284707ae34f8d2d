package evenrise.model.rules;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.SubjectKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The last load comes on no later than the project allows. */
final class DurationRule implements WholePlantRule {
    @Override
    public String id() {
        return "duration";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        OptionalDouble longest = layout.project().maxDurationSeconds();
        List<BrokenRule> broken = new ArrayList<>();
        layout.clocks().ends().forEach((system, duration) -> {
            if (longest.isPresent() && duration > longest.getAsDouble() + Tolerances.SECONDS) {
                broken.add(tooLong(layout, system, duration, longest.getAsDouble()));
            }
        });
        return broken;
    }

    private static BrokenRule tooLong(Layout layout, Optional<String> system, double duration, double longest) {
        Placement last = layout.placements().stream()
                .filter(each -> each.board().isPresent()
                        && (system.isEmpty() || each.load().system().equals(system)))
                .max(Comparator.comparingDouble(Placement::on))
                .orElseThrow();
        Broken broken = Broken.by(BrokenKind.TOO_LONG).load(last.id()).board(RuleWords.boardOf(last));
        system.ifPresent(id -> broken.one("system", SubjectKind.SYSTEM, id));
        return broken.word(
                        "whose",
                        system.map(id -> " of system " + Phrase.quoted(id)).orElse(""))
                .at(RuleWords.leadOf(last))
                .figure(duration, longest, "s")
                .build();
    }
}
