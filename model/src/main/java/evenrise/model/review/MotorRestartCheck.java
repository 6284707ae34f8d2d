package evenrise.model.review;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.plan.RemarkBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.Resume;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Optional;

/**
 * Whether motors start again without that anybody asks, once the mains have returned or an emergency is released: a
 * requirement on the control, which a plan cannot meet by itself.
 */
final class MotorRestartCheck implements ElectricalCheck {
    private static final String ID = "motor-restart";

    private static final String CLAUSE = "IEC 60204-1 7.5, 9.2.3.4.2; NFPA 79";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<Load> motors =
                layout.project().loads().stream().filter(Load::isMotor).toList();
        if (motors.isEmpty()) {
            return;
        }
        Optional<Resume> stated = layout.project().behaviourOrDefault().motorsResume();
        String which = Phrase.counted(motors.size(), "motor") + " (" + Remarks.namedLoads(motors) + ")";
        Grade grade =
                stated.isEmpty() ? Grade.NOT_CHECKED : stated.get() == Resume.SEQUENCE ? Grade.BREAKS : Grade.NOTE;
        RemarkBuilder remark = Remark.builder()
                .check(ID)
                .grade(grade)
                .place(motors.size() == 1 ? motors.get(0).id() : Remarks.PLANT)
                .clause(CLAUSE)
                .subjects(Subjects.loads(motors.stream().map(Load::id).toList()));
        if (stated.isEmpty()) {
            remark.kind("not-checked")
                    .message("not checked: needs behaviour.motors_resume; " + which
                            + " must not start unasked when the mains return or an emergency is released. They are"
                            + " planned to stay off; every peak then is computed both ways and the greater told. Test"
                            + " it before use.");
        } else if (stated.get() == Resume.SEQUENCE) {
            remark.kind("start-unasked")
                    .message(which + (motors.size() == 1 ? " starts" : " start")
                            + " unasked when the mains return or an emergency is released")
                    .cure("let the control keep them off until somebody asks, and state motors_resume: stay-off");
        } else {
            remark.kind("stay-off")
                    .message(which + (motors.size() == 1 ? " stays" : " stay")
                            + " off when the mains return or an emergency is released, as the project states of its"
                            + " control. Test it before use.");
        }
        findings.add(remark.build());
    }
}
