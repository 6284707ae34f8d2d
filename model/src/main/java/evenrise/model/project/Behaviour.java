package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;

/**
 * What the control does when something happens. Each default is common practice, no source, except the two of the
 * renewed inrush, which follow the ITI curve of 2000 (read in a secondary copy); docs/events.md explains each.
 */
@FileRecord
public record Behaviour(
        @Field(
                meaning = "Voltage below which the supply is low, of the nominal one",
                above = 0,
                max = 100,
                byDefault = "80")
        double brownoutPercent,

        @Field(
                meaning = "Time for which the supply must be low until everything switched opens",
                min = 0,
                max = 60,
                byDefault = "2")
        double brownoutHoldSeconds,

        @Field(
                meaning = "Voltage from which the supply is steady again; brownout_pct where that is higher",
                above = 0,
                max = 100,
                byDefault = "90")
        double steadyPercent,

        @Field(
                meaning = "Time for which the supply must be steady until the sequence begins",
                min = 0,
                max = 3600,
                byDefault = "5")
        double steadyWaitSeconds,

        @Field(meaning = "What comes of the loads when the mains have returned", byDefault = "\"sequence\"")
        Resume onReturn,

        @Field(meaning = "Which phases decide that the supply is low", byDefault = "\"any\"")
        PhaseWatch phaseWatch,

        @Field(meaning = "What comes of dropped loads when the emergency contact opens", byDefault = "\"sequence\"")
        Resume onRelease,

        @Field(meaning = "Time from the release until the sequence begins", min = 0, max = 3600, byDefault = "0")
        double releaseWaitSeconds,

        @Field(meaning = "What an on command does during an emergency", byDefault = "\"refuse\"")
        OnInEmergency onInEmergency,

        @Field(meaning = "What becomes of a sequence coming up when an emergency begins", byDefault = "\"stop\"")
        SequenceInEmergency sequenceInEmergency,

        @Field(
                meaning = "What an on or off command does that contradicts the sequence under way",
                byDefault = "\"turn\"")
        CounterCommand counterCommand,

        @Field(meaning = "Where a sequence begins that has only some loads to bring on", byDefault = "\"whole\"")
        Restart restart,

        @Field(meaning = "What a command does that takes off a group which other loads need", byDefault = "\"refuse\"")
        NeededGroup neededGroup,

        @Field(meaning = "Which commands the lock refuses", byDefault = "\"all\"")
        LockRefuses lockRefuses,

        @Field(meaning = "What the other boards do when one is dead", byDefault = "\"carry-on\"")
        DeadBoard deadBoard,

        @Field(meaning = "What the breakers of a board do that dies", byDefault = "\"stay\"")
        DeadContacts deadContacts,

        @Field(
                meaning = "Voltage below which a load that stays connected loses its charge, of the nominal one",
                above = 0,
                max = 100,
                byDefault = "70")
        double reinrushPercent,

        @Field(
                meaning = "Longest time below reinrush_pct after which a load does not draw its inrush anew",
                min = 0,
                max = 60_000,
                byDefault = "20")
        double reinrushAfterMillis,

        @Field(meaning = "Events for which inrush_limit_a holds, too", distinct = true, byDefault = "[]")
        List<PlanEvent> inrushLimitHoldsFor,

        @Field(
                meaning = "What motors do when the mains return or an emergency is released: come back in the sequence"
                        + " or stay off until somebody commands them; when absent they are planned to stay off,"
                        + " and every peak is computed both ways and the greater told",
                optional = true)
        Optional<Resume> motorsResume,

        @Field(
                meaning = "Voltage below which a contactor may drop out, of the nominal one; IEC 60947-4-1: somewhere"
                        + " between 75 and 20 % for alternating current",
                above = 0,
                max = 100,
                byDefault = "75")
        double contactorDropsPercent,

        @Field(
                meaning = "Voltage from which a contactor surely closes, of the nominal one; IEC 60947-4-1: 85 %;"
                        + " contactor_drops_pct where that is higher",
                above = 0,
                max = 100,
                byDefault = "85")
        double contactorClosesPercent,

        @Field(
                meaning = "Time from the last switch-on of a system until another begins that waits for it; common"
                        + " practice, no source",
                min = 0,
                max = 3600,
                byDefault = "5")
        double betweenSystemsSeconds)
        implements BehaviourBuilder.With {

    /** What holds where a project states nothing. */
    public static final Behaviour DEFAULT = builder().build();

    public Behaviour {
        Contract.check(
                Behaviour.class,
                brownoutPercent,
                brownoutHoldSeconds,
                steadyPercent,
                steadyWaitSeconds,
                onReturn,
                phaseWatch,
                onRelease,
                releaseWaitSeconds,
                onInEmergency,
                sequenceInEmergency,
                counterCommand,
                restart,
                neededGroup,
                lockRefuses,
                deadBoard,
                deadContacts,
                reinrushPercent,
                reinrushAfterMillis,
                inrushLimitHoldsFor,
                motorsResume,
                contactorDropsPercent,
                contactorClosesPercent,
                betweenSystemsSeconds);
        inrushLimitHoldsFor = List.copyOf(inrushLimitHoldsFor);
    }

    /** Whether motors are known to stay off after the mains or an emergency; else their return has to be counted. */
    public boolean motorsStayOff() {
        return motorsResume.filter(Resume.STAY_OFF::equals).isPresent();
    }

    /** The voltage from which a contactor closes. */
    public double contactorClosesFromPercent() {
        return Math.max(contactorClosesPercent, contactorDropsPercent);
    }

    /** The voltage from which the supply is steady. */
    public double steadyFromPercent() {
        return Math.max(steadyPercent, brownoutPercent);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static BehaviourBuilder builder() {
        return Defaults.into(BehaviourBuilder.unset(), Behaviour.class);
    }
}
