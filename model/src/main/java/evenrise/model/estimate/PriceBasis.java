package evenrise.model.estimate;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
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
            "cables, conduits and trays beyond what the prices of poles, leads and feeders cover",
            "earthing and bonding, builder's work and fire stopping",
            "emergency lighting and whatever serves life safety",
            "fault, arc-flash and discrimination studies, permits, inspection, testing and commissioning",
            "programming, drawings and training",
            "access equipment, work at night and on live plants",
            "freight, taxes, contingency, overheads and profit");

    public PriceBasis {
        exclusions = List.copyOf(exclusions);
        assumptions = List.copyOf(assumptions);
    }

    public static PriceBasis of(Project project) {
        Optional<List<String>> stated = project.catalogue().flatMap(Catalogue::exclusions);
        List<String> assumptions = new ArrayList<>();
        guesses(project).ifPresent(assumptions::add);
        unstated(
                        project,
                        "no inrush_peak_a, so that no inrush is counted",
                        load -> load.switched() && load.inrushPeakAmps().isEmpty())
                .ifPresent(assumptions::add);
        return new PriceBasis(stated.orElse(USUAL), stated.isEmpty(), assumptions);
    }

    /** Exclusions as one sentence. */
    public String exclusionSentence() {
        if (exclusions.isEmpty()) {
            return "The catalogue states that nothing is excluded.";
        }
        return "Not included in any price: " + String.join("; ", exclusions) + "."
                + (isUsual ? " This is the usual list; state your own as exclusions of the catalogue." : "");
    }

    /** Exclusions, then assumptions. */
    public List<String> sentences() {
        List<String> sentences = new ArrayList<>(List.of(exclusionSentence()));
        sentences.addAll(assumptions);
        return sentences;
    }

    private static Optional<String> guesses(Project project) {
        Map<String, Integer> fields = new TreeMap<>();
        project.loads().forEach(load -> load.guessed().forEach(field -> fields.merge(field, 1, Integer::sum)));
        if (fields.isEmpty()) {
            return Optional.empty();
        }
        List<String> words = fields.entrySet().stream()
                .map(each -> each.getKey() + " of " + Phrase.counted(each.getValue(), "load"))
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
