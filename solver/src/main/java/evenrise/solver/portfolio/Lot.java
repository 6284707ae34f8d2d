package evenrise.solver.portfolio;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One project in one variant, by every seed. */
public final class Lot {
    /** Beyond the quartiles by so many of their distances, a value stands apart (Tukey's fences). */
    private static final double FENCE = 1.5;
    /** Of fewer, none stands apart: quartiles of three mean nothing. */
    private static final int FEWEST_FOR_OUTLIERS = 5;

    private final List<Outcome> outcomes;
    private final List<Outcome> byObjective;

    private Lot(List<Outcome> outcomes) {
        this.outcomes = List.copyOf(outcomes);
        this.byObjective = outcomes.stream()
                .filter(Outcome::keepsRules)
                .sorted(Comparator.comparingDouble(Outcome::objective).thenComparingInt(Outcome::seed))
                .toList();
    }

    /** Lots in the order in which their first outcomes stand. */
    public static List<Lot> of(List<Outcome> outcomes) {
        Map<List<String>, List<Outcome>> lots = new LinkedHashMap<>();
        outcomes.forEach(each -> lots.computeIfAbsent(List.of(each.project(), each.variant()), any -> new ArrayList<>())
                .add(each));
        return lots.values().stream().map(Lot::new).toList();
    }

    public String project() {
        return outcomes.get(0).project();
    }

    public String variant() {
        return outcomes.get(0).variant();
    }

    public List<Outcome> outcomes() {
        return outcomes;
    }

    /** Those whose plans keep every hard rule, the least objective first. */
    public List<Outcome> kept() {
        return byObjective;
    }

    /** The least objective of those that keep every hard rule; of those, one that breaks no electrical limit before others. */
    public Optional<Outcome> best() {
        return byObjective.stream()
                .filter(Outcome::isSound)
                .findFirst()
                .or(() -> byObjective.stream().findFirst());
    }

    /** The middle one; of an even number, the better of the two. */
    public Optional<Outcome> median() {
        return byObjective.isEmpty() ? Optional.empty() : Optional.of(byObjective.get((byObjective.size() - 1) / 2));
    }

    public Optional<Outcome> worst() {
        return byObjective.isEmpty() ? Optional.empty() : Optional.of(byObjective.get(byObjective.size() - 1));
    }

    public long sound() {
        return outcomes.stream().filter(Outcome::isSound).count();
    }

    public List<Outcome> failed() {
        return outcomes.stream().filter(each -> each.failure().isPresent()).toList();
    }

    /** Those whose objective stands apart from the others', to either side. */
    public List<Outcome> outliers() {
        if (byObjective.size() < FEWEST_FOR_OUTLIERS) {
            return List.of();
        }
        double low = quartile(0.25);
        double high = quartile(0.75);
        double room = FENCE * (high - low);
        return byObjective.stream()
                .filter(each -> each.objective() < low - room || each.objective() > high + room)
                .toList();
    }

    /** Between the two nearest values, in proportion (type 7 of Hyndman and Fan, 1996). */
    private double quartile(double part) {
        double at = part * (byObjective.size() - 1);
        int below = (int) Math.floor(at);
        int above = Math.min(below + 1, byObjective.size() - 1);
        double low = byObjective.get(below).objective();
        return low + (at - below) * (byObjective.get(above).objective() - low);
    }
}
