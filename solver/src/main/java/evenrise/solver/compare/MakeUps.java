package evenrise.solver.compare;

import evenrise.model.estimate.TypeLines.PanelLook;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The make-ups of a project that counting does not rule out, one by one in order of price. Panels, and the boards of each
 * system, are listed apart, each in order of its own price; whole make-ups are their sums, cheapest first. Where prices are
 * more than a sum (numbers that lower the price of boards of several systems, cents that are rounded), that is what they cost
 * at least: a make-up then waits until all that are not summed yet cost more than it does.
 */
final class MakeUps {
    private static final double SAME = 1e-9;

    /** After so many ways of one part in a row that are none, or make-ups of other numbers, the rest is not listed. */
    private static final int MOST_PASSED_OVER = 4000;

    /** No more make-ups wait until the price of others is known. */
    private static final int MOST_WAITING = 100_000;

    private final Variation variation;
    private final double rest;
    private final PriceFormula formula;
    private final double rounded;
    private final List<Side<?>> sides = new ArrayList<>();
    private final PriorityQueue<Sum> open =
            new PriorityQueue<>(Comparator.comparingDouble(Sum::price).thenComparing(Sum::number));
    private final Set<List<Integer>> seen = new HashSet<>();
    private final List<MakeUp> listed = new ArrayList<>();
    private final PriorityQueue<Waiting> waiting = new PriorityQueue<>(
            Comparator.comparing((Waiting each) -> each.makeUp().price()).thenComparing(Waiting::number));
    private final CountRange boards;
    private long made;
    private int passedOver;

    /** @param price of all at least */
    private record Sum(List<Integer> at, double price, long number) {}

    private record Waiting(MakeUp makeUp, long number) {}

    /** Ways of one part in order of price, as far as anybody has asked. */
    private static final class Side<K> {
        private final CheapestFirst<K> source;
        private final Predicate<List<K>> isPossible;
        private final List<CheapestFirst.Way<K>> ways = new ArrayList<>();
        private int passedOver;

        Side(CheapestFirst<K> source, Predicate<List<K>> isPossible) {
            this.source = source;
            this.isPossible = isPossible;
        }

        Optional<CheapestFirst.Way<K>> at(int number) {
            while (ways.size() <= number) {
                if (passedOver > MOST_PASSED_OVER) {
                    return Optional.empty();
                }
                Optional<CheapestFirst.Way<K>> next = source.next();
                if (next.isEmpty()) {
                    return Optional.empty();
                }
                if (isPossible.test(next.get().taken())) {
                    ways.add(next.get());
                    passedOver = 0;
                } else {
                    passedOver++;
                }
            }
            return Optional.of(ways.get(number));
        }

        /** What every way that is not listed costs at least, where some may be left out. */
        double restCostsAtLeast() {
            boolean isCut = source.isCut() || passedOver > MOST_PASSED_OVER;
            return isCut ? source.restCostsAtLeast() : Double.POSITIVE_INFINITY;
        }
    }

    /** Numbers of panels and boards that are varied; those that stay are not counted. */
    MakeUps(Variation variation, KindPrices prices, CountRange panels, CountRange boards) {
        this.variation = variation;
        this.formula = prices.formula();
        this.rest = formula.rest();
        this.rounded = formula.mostRounded();
        this.boards = boards;
        sides.add(new Side<>(
                new CheapestFirst<>(
                                byLook(prices.panels()),
                                PanelKind::price,
                                ofPanels(),
                                PanelNeeds.of(variation),
                                panels.least(),
                                panels.most())
                        .stoppedBy(variation::isStopped),
                way -> true));
        boolean isAlone = variation.systems().size() == 1;
        for (Optional<String> system : variation.systems()) {
            BoardNeeds needs = new BoardNeeds(variation, system);
            List<BoardKind> kinds = prices.boards().stream()
                    .filter(kind -> kind.system().equals(system))
                    .toList();
            sides.add(new Side<>(
                    new CheapestFirst<>(
                                    kinds,
                                    BoardKind::price,
                                    isAlone ? ofBoards() : CheapestFirst.Surcharge.none(),
                                    needs.all(),
                                    isAlone ? boards.least() : 0,
                                    isAlone ? boards.most() : Integer.MAX_VALUE)
                            .stoppedBy(variation::isStopped),
                    way -> needs.answer(way) != GroupPacking.Answer.FITS_NOT));
        }
        offer(Collections.nCopies(sides.size(), 0));
    }

    /** Those that look alike side by side, for their price depends on how many they are together. */
    private static List<PanelKind> byLook(List<PanelKind> kinds) {
        Map<PanelLook, List<PanelKind>> looks = new LinkedHashMap<>();
        kinds.forEach(kind -> looks.computeIfAbsent(PanelLook.of(kind.type()), any -> new ArrayList<>())
                .add(kind));
        return looks.values().stream().flatMap(List::stream).toList();
    }

    private CheapestFirst.Surcharge<PanelKind> ofPanels() {
        return new CheapestFirst.Surcharge<>() {
            @Override
            public Object priced(PanelKind kind) {
                return PanelLook.of(kind.type());
            }

            @Override
            public double of(PanelKind kind, int count) {
                return formula.surcharge(PanelLook.of(kind.type()), count);
            }
        };
    }

    private CheapestFirst.Surcharge<BoardKind> ofBoards() {
        return new CheapestFirst.Surcharge<>() {
            @Override
            public Object priced(BoardKind kind) {
                return kind.type();
            }

            @Override
            public double of(BoardKind kind, int count) {
                return formula.surcharge(kind.type(), count);
            }
        };
    }

    /** The make-up of that number in order of price, from 0; empty where there are no more. */
    Optional<MakeUp> at(int number) {
        while (listed.size() <= number) {
            while (waiting.isEmpty() || waiting.peek().makeUp().price() > unsummedFrom() + SAME) {
                if (isCut() || open.isEmpty()) {
                    break;
                }
                sumNext();
            }
            if (waiting.isEmpty()) {
                return Optional.empty();
            }
            listed.add(waiting.poll().makeUp());
        }
        return Optional.of(listed.get(number));
    }

    private void sumNext() {
        Sum sum = open.poll();
        MakeUp makeUp = makeUp(sum);
        for (int side = 0; side < sides.size(); side++) {
            List<Integer> next = new ArrayList<>(sum.at());
            next.set(side, next.get(side) + 1);
            offer(next);
        }
        if (boards.has(makeUp.boards().size())) {
            waiting.add(new Waiting(makeUp, sum.number()));
            passedOver = 0;
        } else {
            passedOver++;
        }
    }

    private boolean isCut() {
        return passedOver > MOST_PASSED_OVER || waiting.size() > MOST_WAITING || variation.isStopped();
    }

    /** What every make-up costs at least that is not summed yet. */
    private double unsummedFrom() {
        return open.isEmpty() ? Double.POSITIVE_INFINITY : open.peek().price() - rounded;
    }

    /** Every make-up below this price that counting does not rule out is listed; infinite where none is left out. */
    double completeBelow() {
        double complete = isCut() ? unsummedFrom() : Double.POSITIVE_INFINITY;
        for (Side<?> cut : sides) {
            double price = rest - rounded + cut.restCostsAtLeast();
            for (Side<?> other : sides) {
                price += other == cut
                        ? 0
                        : other.at(0).map(CheapestFirst.Way::price).orElse(0.0);
            }
            complete = Math.min(complete, price);
        }
        return complete;
    }

    private void offer(List<Integer> at) {
        if (!seen.add(at)) {
            return;
        }
        double price = rest;
        for (int side = 0; side < sides.size(); side++) {
            Optional<? extends CheapestFirst.Way<?>> way = sides.get(side).at(at.get(side));
            if (way.isEmpty()) {
                return;
            }
            price += way.get().price();
        }
        open.add(new Sum(List.copyOf(at), Math.rint(price / SAME) * SAME, made++));
    }

    private MakeUp makeUp(Sum sum) {
        List<PanelKind> panels = taken(0, sum).map(PanelKind.class::cast).toList();
        List<BoardKind> boards = Stream.iterate(1, side -> side < sides.size(), side -> side + 1)
                .flatMap(side -> taken(side, sum))
                .map(BoardKind.class::cast)
                .toList();
        return new MakeUp(panels, boards, formula.total(panels, boards).doubleValue());
    }

    private Stream<?> taken(int side, Sum sum) {
        return sides.get(side).at(sum.at().get(side)).orElseThrow().taken().stream();
    }
}
