package evenrise.solver.compare;

import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.project.Project;
import evenrise.model.project.QuantityRange;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.BooleanSupplier;
import java.util.function.ToIntFunction;

/**
 * Prices of a project whose quantities are drawn from triangles: at the likely number its tip, its feet half a thing below the
 * fewest and above the most, so that both have a chance. Quantities are drawn apart from each other.
 */
public final class QuantityPrices {
    /** So many make-ups are held against what counting says before there is said to be none. */
    private static final int MOST_TRIED = 40;

    private static final String NOTHING = "nothing is left to be fed";

    private final Project project;
    private final BooleanSupplier isStopped;
    private final boolean isOfOwnMakeUp;
    private final Map<List<Integer>, OptionalDouble> known = new HashMap<>();
    private final Map<List<Integer>, String> why = new HashMap<>();

    private QuantityPrices(Project project, BooleanSupplier isStopped, boolean isOfOwnMakeUp) {
        this.project = project;
        this.isStopped = isStopped;
        this.isOfOwnMakeUp = isOfOwnMakeUp;
    }

    /**
     * Of the cheapest make-up for the quantities, each time.
     *
     * @param project without errors, with a catalogue
     */
    public QuantityPrices(Project project, BooleanSupplier isStopped) {
        this(project, isStopped, false);
    }

    /** Of the project's own panels and boards, with the loads that were drawn. */
    public static QuantityPrices ofOwnMakeUp(Project project, BooleanSupplier isStopped) {
        return new QuantityPrices(project, isStopped, true);
    }

    /** The same for the same seed. */
    public PriceRange drawn(int draws, long seed) {
        List<QuantityRange> ranges = project.quantities();
        OptionalDouble likely = price(counts(QuantityRange::tip));
        List<PriceRange.Swing> swings = new ArrayList<>();
        for (int i = 0; i < ranges.size() && !isStopped.getAsBoolean(); i++) {
            QuantityRange range = ranges.get(i);
            if (range.stated()) {
                swings.add(swing(range));
            }
        }
        Random random = new Random(seed);
        List<PriceRange.Draw> drawn = new ArrayList<>();
        while (drawn.size() < draws && !isStopped.getAsBoolean()) {
            List<Integer> counts = counts(range -> draw(range, random.nextDouble()));
            drawn.add(new PriceRange.Draw(counts, price(counts)));
        }
        return new PriceRange(
                ranges, likely, drawn, swings, drawn.size() < draws || isStopped.getAsBoolean(), isOfOwnMakeUp);
    }

    private PriceRange.Swing swing(QuantityRange range) {
        List<Integer> low = counts(only(range, range.low()));
        List<Integer> high = counts(only(range, range.high()));
        return new PriceRange.Swing(
                range,
                price(low),
                price(high),
                Optional.ofNullable(why.get(high)).or(() -> Optional.ofNullable(why.get(low))));
    }

    private List<Integer> counts(ToIntFunction<QuantityRange> of) {
        return project.quantities().stream().map(of::applyAsInt).toList();
    }

    private static ToIntFunction<QuantityRange> only(QuantityRange range, int count) {
        return each -> each == range ? count : each.tip();
    }

    /** @param chance from 0 to 1, of a number that is no greater */
    static int draw(QuantityRange range, double chance) {
        double from = range.low() - 0.5;
        double to = range.high() + 0.5;
        double tip = range.tip();
        double below = (tip - from) / (to - from);
        double at = chance < below
                ? from + Math.sqrt(chance * (to - from) * (tip - from))
                : to - Math.sqrt((1 - chance) * (to - from) * (to - tip));
        return (int) Math.max(range.low(), Math.min(range.high(), Math.rint(at)));
    }

    private OptionalDouble price(List<Integer> counts) {
        return known.computeIfAbsent(counts, isOfOwnMakeUp ? this::own : this::cheapest);
    }

    /** Empty where counting shows that the panels and boards do not hold the loads. */
    private OptionalDouble own(List<Integer> counts) {
        Project drawn = DrawnQuantities.of(project, counts);
        if (drawn.loads().isEmpty()) {
            why.put(counts, NOTHING);
            return OptionalDouble.empty();
        }
        Optional<String> against = Scenarios.against(drawn);
        against.ifPresent(each -> why.put(counts, each));
        return against.isPresent()
                ? OptionalDouble.empty()
                : OptionalDouble.of(BillOfMaterials.of(drawn).total().doubleValue());
    }

    private OptionalDouble cheapest(List<Integer> counts) {
        Project drawn = DrawnQuantities.of(project, counts);
        if (drawn.loads().isEmpty()) {
            why.put(counts, NOTHING);
            return OptionalDouble.empty();
        }
        Variation variation = new Variation(drawn, isStopped);
        MakeUps makeUps = new MakeUps(variation, new KindPrices(variation), CountRange.ANY, CountRange.ANY);
        for (int number = 0; number < MOST_TRIED; number++) {
            Optional<MakeUp> makeUp = makeUps.at(number);
            if (makeUp.isEmpty()) {
                why.putIfAbsent(counts, NoMakeUp.why(drawn));
                return OptionalDouble.empty();
            }
            Optional<String> against = Scenarios.against(variation, makeUp.get());
            if (against.isEmpty()) {
                why.remove(counts);
                return makeUp.map(MakeUp::price).map(OptionalDouble::of).orElseThrow();
            }
            why.put(counts, against.get());
        }
        return OptionalDouble.empty();
    }
}
