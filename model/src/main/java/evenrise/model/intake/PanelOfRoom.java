package evenrise.model.intake;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** What is in a room is fed from a panel, unless its row says otherwise. */
@FileRecord
public record PanelOfRoom(
        @Field(meaning = "Room, as the list names it", atLeast = 1)
        String room,

        @Field(meaning = "Panel that feeds what is in it", atLeast = 1)
        String panel) {
    public PanelOfRoom {
        Contract.check(PanelOfRoom.class, room, panel);
    }
}
