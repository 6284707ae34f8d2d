package evenrise.model.estimate;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Plan;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.QuantityRange;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * What stands with every price of a project: what it leaves out, and what it rests on that nobody has stated.
 *
 * @param exclusions what no price covers; the catalogue's list, else the usual one
 * @param isUsual whether the list is the usual one, which nobody has gone through for this project
 * @param assumptions sentences
 */
public record PriceBasis(List<String> exclusions, boolean isUsual, List<String> assumptions) {
    private static final int MOST_NAMED = 6;

    /** Common practice, no source. */
    private static final List<String> USUAL = List.of(
            "the supply, its meter and what stands before it",
            "the gear that is fed, its installation and its plugs",
            "earthing and bonding, builder's work and fire stopping",
            "emergency lighting and whatever serves life safety",
            "fault, arc-flash and discrimination studies, permits, inspection, testing and commissioning",
            "programming, drawings and training");

    public PriceBasis {
        exclusions = List.copyOf(exclusions);
        assumptions = List.copyOf(assumptions);
    }

    public static PriceBasis of(Project project) {
        return of(project, Optional.empty());
    }

    /** @param plan that the price was made with */
    public static PriceBasis of(Project project, Optional<Plan> plan) {
        Optional<List<String>> stated = project.catalogue().flatMap(Catalogue::exclusions);
        List<String> assumptions = new ArrayList<>();
        project.catalogue()
                .flatMap(Catalogue::source)
                .ifPresent(source -> assumptions.add("Prices are those of " + source + "."));
        guesses(project).ifPresent(assumptions::add);
        unstated(
                        project,
                        "no inrush current, so that none is counted",
                        load -> load.switched() && load.inrushPeakAmps().isEmpty())
                .ifPresent(assumptions::add);
        open(project).ifPresent(assumptions::add);
        unknown(project).ifPresent(assumptions::add);
        if (plan.isEmpty() && LeadLines.arePriced(project)) {
            assumptions.add("Control leads between panels follow from a plan and are not in this price.");
        }
        return new PriceBasis(stated.orElseGet(() -> usual(project.catalogue())), stated.isEmpty(), assumptions);
    }

    /** Without what the catalogue covers. */
    private static List<String> usual(Optional<Catalogue> catalogue) {
        List<String> usual = new ArrayList<>(USUAL);
        boolean hasCables = catalogue.filter(it -> !it.cables().isEmpty()).isPresent();
        boolean worksAtNight = catalogue
                .flatMap(Catalogue::labourHours)
                .filter(it -> it.nightPercent() > 0)
                .isPresent();
        boolean hasPercentages =
                catalogue.filter(it -> !it.percentages().isEmpty()).isPresent();
        usual.add(
                2,
                hasCables
                        ? "cables, conduits and trays that are not listed"
                        : "cables, conduits and trays beyond what the prices of poles, leads and feeders cover");
        usual.add(
                worksAtNight
                        ? "access equipment, work on live plants"
                        : "access equipment, work at night and on live plants");
        usual.add(
                hasPercentages
                        ? "whatever of freight, taxes, contingency, overheads and profit is not listed"
                        : "freight, taxes, contingency, overheads and profit");
        return usual;
    }

    /** Exclusions as one sentence, for whoever pays. */
    public String exclusionWords() {
        return exclusions.isEmpty()
                ? "Nothing is excluded."
                : "Not included in any price: " + String.join("; ", exclusions) + ".";
    }

    /** The same for whoever offers: with where the list is from. */
    public String exclusionSentence() {
        if (exclusions.isEmpty()) {
            return "The catalogue states that nothing is excluded.";
        }
        return exclusionWords()
                + (isUsual ? " This is the usual list; state your own as exclusions of the catalogue." : "");
    }

    /** Exclusions, then assumptions. */
    public List<String> sentences() {
        List<String> sentences = new ArrayList<>(List.of(exclusionSentence()));
        sentences.addAll(assumptions);
        return sentences;
    }

    private static Optional<String> open(Project project) {
        List<String> words = project.quantities().stream()
                .filter(QuantityRange::stated)
                .map(each -> each.name() + " " + each.listed() + " (" + each.low() + " to " + each.high()
                        + (each.tip() == each.listed() ? "" : ", likely " + each.tip()) + ")")
                .toList();
        return words.isEmpty()
                ? Optional.empty()
                : Optional.of("Quantities that are open are counted as: " + String.join(", ", words) + ".");
    }

    private static Optional<String> unknown(Project project) {
        List<String> words = project.quantities().stream()
                .filter(each -> !each.stated())
                .map(each -> each.name() + " " + each.listed())
                .toList();
        return words.isEmpty()
                ? Optional.empty()
                : Optional.of("Nobody has said how many there are, and no range covers it; counted as: "
                        + String.join(", ", words) + ".");
    }

    private static Optional<String> guesses(Project project) {
        Map<String, Integer> fields = new TreeMap<>();
        project.loads().forEach(load -> load.guessed().forEach(field -> fields.merge(field, 1, Integer::sum)));
        if (fields.isEmpty()) {
            return Optional.empty();
        }
        List<String> words = fields.entrySet().stream()
                .map(each -> FieldWords.of(each.getKey()) + " of " + Phrase.counted(each.getValue(), "load"))
                .toList();
        return Optional.of("Guessed, and to be confirmed: " + String.join(", ", words) + ".");
    }

    private static Optional<String> unstated(Project project, String what, Predicate<Load> which) {
        List<String> ids = project.loads().stream().filter(which).map(Load::id).toList();
        return ids.isEmpty()
                ? Optional.empty()
                : Optional.of(Phrase.counted(ids.size(), "switched load") + (ids.size() == 1 ? " states " : " state ")
                        + what + ": " + Phrase.quoted(ids, MOST_NAMED) + ".");
    }
}
