package evenrise.solver.intake;

import evenrise.model.project.Load;
import evenrise.model.project.QuantityRange;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Rows of a list that do not say exactly how many pieces there are, as numbers of loads: where several pieces are on one
 * breaker, as many breakers as the pieces need.
 */
final class OpenQuantities {
    private final Notices notices;

    OpenQuantities(Notices notices) {
        this.notices = notices;
    }

    /** @param loads one for each branch, in their order */
    List<QuantityRange> of(List<Bundler.Branch> branches, List<Load> loads) {
        Map<String, List<Integer>> rows = new LinkedHashMap<>();
        for (int i = 0; i < branches.size(); i++) {
            for (Item piece : branches.get(i).pieces()) {
                List<Integer> of = piece.open().isEmpty()
                        ? new ArrayList<>()
                        : rows.computeIfAbsent(piece.place(), any -> new ArrayList<>());
                if (of.isEmpty() || of.get(of.size() - 1) != i) {
                    of.add(i);
                }
            }
        }
        Map<String, Item> items = new LinkedHashMap<>();
        rows.forEach((place, numbers) -> items.put(
                place,
                branches.get(numbers.get(0)).pieces().stream()
                        .filter(piece -> piece.place().equals(place))
                        .findFirst()
                        .orElseThrow()));
        List<QuantityRange> ranges = new ArrayList<>();
        rows.forEach((place, numbers) -> {
            Item item = items.get(place);
            if (canVary(item, numbers, branches, loads)) {
                boolean isNamedAlike = items.values().stream()
                        .anyMatch(other -> other != item && other.name().equals(item.name()));
                ranges.add(range(item, isNamedAlike, numbers, branches, loads));
            } else {
                notices.add(new Notice(
                        Notice.Kind.QUESTION,
                        place,
                        "'" + item.name() + "': how many are there? No range of prices covers it, as its pieces share"
                                + " circuits or a contactor or have several supplies: then more or fewer of them change"
                                + " others."));
            }
        });
        return ranges;
    }

    /** Whether its breakers carry its pieces alone, each piece is on one of them, and nothing is switched with them. */
    private static boolean canVary(Item item, List<Integer> numbers, List<Bundler.Branch> branches, List<Load> loads) {
        int pieces = 0;
        for (int number : numbers) {
            Bundler.Branch branch = branches.get(number);
            pieces += branch.pieces().size();
            boolean isAlone = branch.pieces().stream().allMatch(item::equals);
            boolean isTied = !branch.kind().ties().contactor().isEmpty()
                    || loads.get(number).comesWith().isPresent();
            if (!isAlone || isTied) {
                return false;
            }
        }
        return pieces == item.quantity();
    }

    /** @param isNamedAlike whether another row has the same name, and the room tells them apart */
    private static QuantityRange range(
            Item item, boolean isNamedAlike, List<Integer> numbers, List<Bundler.Branch> branches, List<Load> loads) {
        OpenCount open = item.open().orElseThrow();
        // Full breakers first: the last are left out first, and more are like the first.
        List<Integer> fullFirst = numbers.stream()
                .sorted(Comparator.comparing(
                        number -> -branches.get(number).pieces().size()))
                .toList();
        int each = branches.get(fullFirst.get(0)).pieces().size();
        List<String> ids =
                fullFirst.stream().map(number -> loads.get(number).id()).toList();
        int low = Math.min(ids.size(), breakers(open.low(), each));
        int high = Math.max(ids.size(), breakers(open.high(), each));
        int likely = Math.max(low, Math.min(high, breakers(open.likely(), each)));
        return QuantityRange.builder()
                .name(item.name()
                        + (isNamedAlike && !item.room().isEmpty() ? ", " + item.room() : "")
                        + (each == 1 ? "" : " (breakers of up to " + each + ")"))
                .loads(ids)
                .low(open.isStated() ? low : ids.size())
                .high(open.isStated() ? high : ids.size())
                .likely(open.isStated() && likely != ids.size() ? OptionalInt.of(likely) : OptionalInt.empty())
                .stated(open.isStated())
                .build();
    }

    private static int breakers(int pieces, int each) {
        return (pieces + each - 1) / each;
    }
}
