# The handler of our protocol: the office makes one for each window that asks for a command of ours and gives it the
# window's frame, so that a command always works on the workbook that it was given from.
import unohelper
from com.sun.star.frame import DispatchResultEvent, FeatureStateEvent, XDispatchProvider, XNotifyingDispatch
from com.sun.star.lang import XInitialization, XServiceInfo

FAILURE, SUCCESS = 0, 1  # com.sun.star.frame.DispatchResultState
PROTOCOL = "trenchbook.menu:"
MENU = "trenchbook.Menu"


class Menu(unohelper.Base, XDispatchProvider, XNotifyingDispatch, XInitialization, XServiceInfo):
    def __init__(self, context):
        self.context, self.frame = context, None

    def initialize(self, arguments):
        if arguments:
            self.frame = arguments[0]

    def queryDispatch(self, address, _target, _flags):
        return self if address.Complete.startswith(PROTOCOL) else None

    def queryDispatches(self, asked_for):
        return tuple(self.queryDispatch(one.FeatureURL, one.FrameName, one.SearchFlags) for one in asked_for)

    def dispatch(self, address, arguments):
        """From the menu: a person is at the window."""
        self.perform(address, arguments, None)

    def dispatchWithNotification(self, address, arguments, listener):
        """From a program, which waits for the answer: nobody is asked, nothing is shown."""
        self.perform(address, arguments, listener)

    def addStatusListener(self, listener, address):
        state = FeatureStateEvent()
        state.Source, state.FeatureURL, state.IsEnabled = self, address, True
        listener.statusChanged(state)

    def removeStatusListener(self, _listener, _address):
        pass

    def perform(self, address, arguments, listener):
        Shell.opened(self.context)
        done, answer, call = False, Said(""), None
        try:
            call = Call(self.context, self.frame, address.Complete[len(PROTOCOL):],
                        {one.Name: one.Value for one in arguments}, listener is not None)
            if Shell.library is None:
                raise Refusal(BAD_ARGUMENT, "%s; %s" % (shell_name(), Shell.unusable.said(call.language)))
            answer, done = run(call), True
        except Cancelled:
            answer = Said("", False)
        except Refusal as refusal:
            answer = Said(refusal.sentence)
        except OfficeException as error:
            answer = Said("The office says: %s" % error.Message)
        except Exception as error:  # Whatever it is: a sentence, and the office goes on.
            answer = Said("%s: %s" % (type(error).__name__, error))
        if listener is not None:
            event = DispatchResultEvent()
            event.Source, event.State, event.Result = self, SUCCESS if done else FAILURE, answer.says
            listener.dispatchFinished(event)
        elif call is not None and answer.box and answer.says:
            show(call, done, answer.says)

    def getImplementationName(self):
        return MENU + "Implementation"

    def supportsService(self, name):
        return name == MENU

    def getSupportedServiceNames(self):
        return (MENU,)


g_ImplementationHelper = unohelper.ImplementationHelper()
g_ImplementationHelper.addImplementation(Menu, MENU + "Implementation", (MENU,))
