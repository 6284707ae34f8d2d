package evenrise.model.answer;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.SubjectKind;
import evenrise.model.rules.Placement;
import java.util.List;

/**
 * Why a load is where it is.
 *
 * @param load as the plan has it
 * @param alternatives every other place, the best first
 * @param everyExchange whether exchanges with loads of other panels and boards are among them
 * @param broken what the plan as it is breaks and is about this load
 */
public record LoadAnswer(
        Placement load, List<Alternative> alternatives, boolean everyExchange, List<BrokenRule> broken) {
    public LoadAnswer {
        alternatives = List.copyOf(alternatives);
        broken = List.copyOf(broken);
    }

    static LoadAnswer of(
            Placement load, List<Alternative> alternatives, boolean everyExchange, List<BrokenRule> broken) {
        return new LoadAnswer(
                load,
                alternatives,
                everyExchange,
                broken.stream()
                        .filter(each -> each.isAbout(SubjectKind.LOAD, load.id()))
                        .toList());
    }

    /** Those that break nothing that the plan keeps. */
    public List<Alternative> sound() {
        return alternatives.stream().filter(Alternative::isSound).toList();
    }
}
