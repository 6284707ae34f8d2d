package evenrise.model.check;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Which boards are missing, and for which loads, in words. */
final class MissingBoards {
    private final Candidates candidates;

    MissingBoards(Candidates candidates) {
        this.candidates = candidates;
    }

    /** How many loads that drop and that hold, by system where there are systems: {@code 28 loads that hold}. */
    String counted(Collection<Load> loads) {
        Map<List<Object>, Integer> kinds = new LinkedHashMap<>();
        boolean hasSystems = !candidates.parts.project.systems().isEmpty();
        for (Load load : loads) {
            String of = hasSystems
                    ? load.system().map(id -> " of system " + Shown.quoted(id)).orElse(" of no system")
                    : "";
            kinds.merge(List.of(of, EmergencyClasses.drops(candidates.parts, load)), 1, Integer::sum);
        }
        return kinds.entrySet().stream()
                .map(each -> Phrase.counted(each.getValue(), "load")
                        + each.getKey().get(0)
                        + does(each.getValue(), each.getKey().get(1).equals(true)))
                .collect(Collectors.joining(" and "));
    }

    private static String does(int count, boolean drops) {
        String ending = count == 1 ? "s" : "";
        return drops ? " that drop" + ending + " on an emergency" : " that hold" + ending;
    }

    /**
     * The cure where so many outputs are missing for some loads.
     *
     * @param boards that the loads could be on
     */
    String forOutputs(int outputs, List<Board> boards, Collection<Load> loads) {
        Optional<BoardType> type = largest(boards);
        int usable =
                type.map(it -> Math.max(1, it.outputs() - it.spareOutputs())).orElse(outputs);
        return "Maybe " + add((outputs + usable - 1) / usable, type, loads) + ", for the "
                + Phrase.counted(outputs, "output") + " missing, or let boards reach more panels.";
    }

    /** The cure where so many whole boards are missing for some loads. */
    String whole(int count, List<Board> boards, Collection<Load> loads) {
        return "Maybe " + add(count, largest(boards), loads) + ".";
    }

    private String add(int count, Optional<BoardType> type, Collection<Load> loads) {
        BitSet panels = new BitSet();
        loads.forEach(load -> panels.or(candidates.ofLoad.get(load.id())));
        boolean isAnywhere = panels.cardinality() == candidates.panels.size() && panels.cardinality() > 1;
        String where = isAnywhere
                ? ""
                : " that " + (count == 1 ? "reaches " : "reach ") + (panels.cardinality() == 1 ? "panel " : "one of ")
                        + candidates.names(panels);
        return "add " + Phrase.counted(count, "board")
                + type.map(it -> text(count, it)).orElse("") + where;
    }

    private static String text(int count, BoardType type) {
        return " of type " + Shown.quoted(type.id()) + " (" + Phrase.counted(type.outputs(), "output")
                + (count == 1 ? ")" : " each)");
    }

    /** The largest type of some boards, or of all where there are none; empty where it is in doubt. */
    private Optional<BoardType> largest(List<Board> boards) {
        List<BoardType> types = boards.isEmpty()
                ? candidates.parts.project.boardTypes()
                : boards.stream()
                        .map(board -> candidates.parts.types.get(board.type()))
                        .toList();
        return types.stream()
                .max(Comparator.comparingInt(type -> type.outputs() - type.spareOutputs()))
                .filter(type -> type.outputs() < BenefitOfDoubt.MOST);
    }
}
