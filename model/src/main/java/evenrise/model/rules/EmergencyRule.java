package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.Board;
import evenrise.model.project.EmergencyBy;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** No board that an emergency drops as a whole mixes loads that drop on an emergency with loads that hold. */
final class EmergencyRule implements Rule {
    @Override
    public String id() {
        return "emergency";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        for (Board board : layout.project().boards()) {
            if (layout.index().typeOf(board).emergencyBy() == EmergencyBy.OUTPUT) {
                continue;
            }
            Map<Boolean, List<String>> byDrop = layout.outputs(board.id()).values().stream()
                    .collect(Collectors.partitioningBy(
                            each -> layout.index().drops(each.load()),
                            Collectors.mapping(Placement::id, Collectors.toList())));
            List<String> drop = byDrop.get(true);
            List<String> hold = byDrop.get(false);
            if (!drop.isEmpty() && !hold.isEmpty()) {
                broken.add(Broken.by(BrokenKind.MIXED_EMERGENCY)
                        .board(board.id())
                        .all("drop", SubjectKind.LOAD, drop)
                        .all("hold", SubjectKind.LOAD, hold)
                        .at("board " + board.id())
                        .build());
            }
        }
        return broken;
    }
}
