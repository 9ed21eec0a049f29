"""Why a file cannot be read or written."""

from procbuilder.model.fault import Cause

CAUSES: dict[str, str] = {
    Cause.PERMISSION: "that is not permitted",
    Cause.READ_ONLY: "it lies where nothing may be written",
    Cause.FULL: "the disk is full",
    Cause.MISSING: "there is no such file or folder",
    Cause.FOLDER: "it is a folder",
    Cause.NO_FOLDER: "a part of its path is no folder",
    Cause.TOO_LONG: "its name is too long",
    Cause.HELD: "another program holds it",
    Cause.DEVICE: "the disk reports an error",
    Cause.SYSTEM: "error {number} of the system",
    Cause.EMPTY: "the file is empty",
    Cause.CUT_OFF: "its end is missing, and with it the index of its pictures",
    Cause.NO_RECORDING: "it is in no format of a recording that is known here",
    Cause.NO_PICTURES: "it holds no moving pictures",
    Cause.SOUND_ALONE: "it has sound but no moving pictures",
    Cause.UNKNOWN_CODING: "its pictures are in a coding that is not known here",
    Cause.NOT_ONE_PICTURE: "there is not one picture in it",
    Cause.NO_TIME: "its pictures last no time, so nothing can be shown of it",
    Cause.NONE_AT: "no picture can be decoded at {at}",
    Cause.NONE_WITHIN: "no picture can be decoded in {at}",
    Cause.NO_STILL: "it is neither JPEG nor PNG",
    Cause.DAMAGED: "it is damaged",
    Cause.OBLONG: "it has {width} x {height} pixels; none that is over {most} times as long as wide is read",
    Cause.LARGE: "it has {width} x {height} pixels; at most {most} million are read",
    Cause.HEAVY: "its file takes more than {most} MB",
    Cause.LARGE_FILM: "its pictures have {width} x {height} pixels, more than {most} million",
    Cause.LONG_FILM: "it holds more than {most} pictures",
}
