package evenrise.solver.compare;

import evenrise.model.contract.Phrase;
import evenrise.model.project.BoardType;
import evenrise.model.project.GroupSeating;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Why nothing can be built for a project: the reason that is met most often, a group that fills a board without its spare. */
final class NoMakeUp {
    private static final String ELSE =
            "no numbers of panels and boards have the slots, rating and outputs, and hold the" + " shutdown groups";

    private NoMakeUp() {}

    static String why(Project project) {
        List<BoardType> whole = project.boardTypes().stream()
                .filter(type -> type.groups() == GroupSeating.ONE_BOARD)
                .toList();
        boolean hasOthers = whole.size() < project.boardTypes().size();
        int outputs = whole.stream().mapToInt(BoardType::outputs).max().orElse(0);
        int room = whole.stream().mapToInt(GroupPacking::room).max().orElse(0);
        Map<String, Integer> sizes = new LinkedHashMap<>();
        for (Load load : project.loads()) {
            if (load.switched() && load.comesWith().isEmpty()) {
                load.shutdownGroup().ifPresent(id -> sizes.merge(id, 1, Integer::sum));
            }
        }
        Optional<String> filling = sizes.entrySet().stream()
                .filter(each -> !hasOthers && each.getValue() > room && each.getValue() <= outputs)
                .map(each -> "shutdown group '" + each.getKey() + "' has " + Phrase.counted(each.getValue(), "load")
                        + ", and the largest board of " + outputs + " outputs has " + room
                        + " beside those to be left free")
                .findFirst();
        return filling.orElse(ELSE);
    }
}
