package evenrise.solver.intake;

import evenrise.model.electrical.breaker.BranchRating;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Role;
import evenrise.model.project.TripCurve;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The circuits that a list states are kept: what has the same one shares a breaker, what has a breaker and no circuit is alone
 * on it, and ratings stay as stated. What looks wrong with one is asked, not mended.
 */
final class ListedCircuits {
    private static final double LARGEST_BREAKER_AMPS = 63;

    private final Mapping mapping;
    private final Notices notices;
    private final Map<Object, List<Item>> byCircuit = new LinkedHashMap<>();

    /** A circuit of a panel; the panel is empty where the list names none. */
    private record Named(String panel, String circuit) {}

    ListedCircuits(Mapping mapping, Notices notices, List<Item> items) {
        this.mapping = mapping;
        this.notices = notices;
        items.stream().filter(item -> item.circuit().isStated()).forEach(this::seat);
    }

    private void seat(Item item) {
        CircuitNames names = item.circuit().names();
        if (names.all().isEmpty()) {
            for (int i = 0; i < item.quantity(); i++) {
                byCircuit.put(new Object(), List.of(item));
            }
            return;
        }
        for (String name : names.ofPieces(item.quantity(), item.poles())) {
            byCircuit
                    .computeIfAbsent(new Named(item.ties().fedFrom(), name), any -> new ArrayList<>())
                    .add(item);
        }
    }

    List<Bundler.Branch> branches() {
        List<Bundler.Branch> branches = new ArrayList<>();
        byCircuit.forEach((circuit, pieces) -> branch(circuit, pieces).ifPresent(branches::add));
        return branches;
    }

    private Optional<Bundler.Branch> branch(Object circuit, List<Item> all) {
        List<Item> pieces = ofSamePoles(circuit, all);
        double amps = pieces.stream().mapToDouble(Item::amps).sum();
        List<StatedBreaker> stated = pieces.stream()
                .flatMap(piece -> piece.circuit().breaker().stream())
                .distinct()
                .toList();
        OptionalDouble rating = stated.stream().mapToDouble(StatedBreaker::amps).min();
        if (rating.isEmpty()) {
            OptionalDouble carrying =
                    BranchRating.carrying(mapping.practiceOfRatings(), amps, mapping.continuousFraction());
            rating = carrying.isPresent() && carrying.getAsDouble() <= LARGEST_BREAKER_AMPS
                    ? OptionalDouble.of(Math.max(carrying.getAsDouble(), mapping.usualBreakerAmps()))
                    : OptionalDouble.empty();
        }
        if (rating.isEmpty()) {
            leaveOut(
                    pieces,
                    String.format(
                            Locale.ROOT,
                            "%s carries %.2f A; no breaker up to %.0f A does. Maybe it is several circuits, or its"
                                    + " breaker is to be stated.",
                            named(circuit),
                            amps,
                            LARGEST_BREAKER_AMPS));
            return Optional.empty();
        }
        askAbout(circuit, pieces, amps, rating.getAsDouble(), stated);
        Optional<TripCurve> curve = stated.stream()
                .flatMap(breaker -> breaker.curve().stream())
                .findFirst()
                .or(mapping::curveOfBreakers);
        return Optional.of(new Bundler.Branch(kind(pieces), rating.getAsDouble(), curve, pieces, !stated.isEmpty()));
    }

    /** One breaker has one number of poles. */
    private List<Item> ofSamePoles(Object circuit, List<Item> all) {
        int poles = all.get(0).poles();
        List<Item> same = all.stream().filter(item -> item.poles() == poles).toList();
        List<Item> others = all.stream().filter(item -> item.poles() != poles).toList();
        if (!others.isEmpty()) {
            leaveOut(
                    others,
                    named(circuit) + " has " + poles + (poles == 1 ? " pole" : " poles") + " by "
                            + all.get(0).place() + ", " + others.get(0).poles() + " by this. Maybe it is another"
                            + " circuit.");
        }
        return same;
    }

    /** What is on together is of one kind: that of the piece that draws most, unswitched where any piece is. */
    private static Item.Kind kind(List<Item> pieces) {
        Map<Role, Double> byRole = new EnumMap<>(Role.class);
        pieces.forEach(piece -> byRole.merge(piece.role(), piece.amps(), Double::sum));
        Role role = byRole.entrySet().stream()
                .max(Map.Entry.comparingByValue(Comparator.naturalOrder()))
                .orElseThrow()
                .getKey();
        Item.Kind first = pieces.get(0).kind();
        return new Item.Kind(
                first.room(),
                role,
                first.zone(),
                first.feed(),
                first.poles(),
                pieces.stream().allMatch(piece -> piece.service().isSwitched()),
                first.outletAmps(),
                first.ties(),
                first.openRow());
    }

    private void askAbout(Object circuit, List<Item> pieces, double amps, double rating, List<StatedBreaker> stated) {
        List<String> differing = new ArrayList<>();
        if (stated.stream().mapToDouble(StatedBreaker::amps).distinct().count() > 1) {
            differing.add("ratings, of which the least counts");
        }
        Item.Kind first = pieces.get(0).kind();
        if (pieces.stream().anyMatch(piece -> piece.role() != first.role())) {
            differing.add("roles, of which that with most current counts");
        }
        if (pieces.stream().anyMatch(piece -> piece.service() != pieces.get(0).service())) {
            differing.add("words of what may be switched, and is unswitched as a whole where any is");
        }
        if (pieces.stream()
                .anyMatch(piece -> !piece.zone().equals(first.zone())
                        || !piece.feed().equals(first.feed())
                        || !piece.ties().equals(first.ties()))) {
            differing.add("zones, feeds, systems, racks or contactors, of which the first counts");
        }
        if (!differing.isEmpty()) {
            ask(pieces, named(circuit) + " holds different " + String.join("; different ", differing) + ". Is it one?");
        }
        double usable = mapping.continuousFraction() * rating;
        if (amps > usable + 1e-9) {
            ask(
                    pieces,
                    String.format(
                            Locale.ROOT,
                            "%s carries %.2f A on a breaker of %s A, more than %s: is that so? It is kept as the list"
                                    + " has it.",
                            named(circuit),
                            amps,
                            plain(rating),
                            amps > rating
                                    ? "its rating"
                                    : String.format(
                                            Locale.ROOT,
                                            "the %.0f %% of it that may be used continuously",
                                            100 * mapping.continuousFraction())));
        }
    }

    private static String named(Object circuit) {
        return circuit instanceof Named it
                ? "circuit '" + it.circuit() + "'" + (it.panel().isEmpty() ? "" : " of panel '" + it.panel() + "'")
                : "it";
    }

    private static String plain(double amps) {
        return amps == Math.rint(amps) ? String.valueOf((long) amps) : String.valueOf(amps);
    }

    private void ask(List<Item> pieces, String text) {
        notices.add(new Notice(
                Notice.Kind.QUESTION, pieces.get(0).place(), "'" + pieces.get(0).name() + "': " + text));
    }

    private void leaveOut(List<Item> pieces, String why) {
        Set<String> told = new HashSet<>();
        for (Item piece : pieces) {
            notices.leaveOut(piece.isFurther() ? 0 : 1);
            if (told.add(piece.place())) {
                notices.add(
                        new Notice(Notice.Kind.PROBLEM, piece.place(), "a piece of '" + piece.name() + "': " + why));
            }
        }
    }
}
